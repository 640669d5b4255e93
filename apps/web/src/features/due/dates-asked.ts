import { useQuery } from '@tanstack/react-query';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { useListAddress } from '../../ui/list/list-address.js';

const pageQuery = graphql(`
  query Dates($first: Int, $after: String, $depot: String, $tour: String, $kind: String, $days: Int) {
    examinedItems(first: $first, after: $after, depot: $depot, tour: $tour, kind: $kind, days: $days) {
      pageInfo { hasNextPage endCursor }
      edges { node { id kind model place dueOn dueState state count } }
    }
  }
`);
const choicesQuery = graphql(`query DatesChoices { depots tours(first: 200) { edges { node { id name } } } }`);

/** What of the due list is wanted; empty: all. */
export interface DatesAsked {
  readonly depot: string;
  readonly tour: string;
  readonly kind: string;
  readonly days: string;
}

export const datesPage = async (asked: DatesAsked, first: number, after: string | null) =>
  (
    await request(pageQuery, {
      ...{ first, after, depot: asked.depot || null, tour: asked.tour || null },
      ...{ kind: asked.kind || null, days: asked.days === '' ? null : Number(asked.days) },
    })
  ).examinedItems;

export type DatesLine = Awaited<ReturnType<typeof datesPage>>['edges'][number]['node'];

/** The choices, which the address holds so that a list can be sent to another and printed; `search` is that part of the address. */
export const useDatesAsked = () => useListAddress(['depot', 'tour', 'kind', 'days']);

/** Depots and tours to choose from. */
export const useDatesChoices = () => useQuery({ queryKey: ['dates choices'], queryFn: () => request(choicesQuery) });
