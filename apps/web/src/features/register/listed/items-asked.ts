import { keepPreviousData, useInfiniteQuery } from '@tanstack/react-query';
import { graphql } from '#contracts';
import { request } from '../../../platform/request.js';
import { useListAddress } from '../../../ui/list/list-address.js';
import { orderOf } from '../../../ui/list/sort-head.js';

const itemsQuery = graphql(`
  query Items($search: String, $kind: String, $state: String, $model: String, $depot: String, $sort: String, $descending: Boolean, $after: String) {
    items(search: $search, kind: $kind, state: $state, model: $model, depot: $depot, sort: $sort, descending: $descending, first: 50, after: $after) {
      totalCount isMoreThanCounted
      pageInfo { hasNextPage endCursor }
      edges { node { id kind model state depot count place dueOn dueState } }
    }
  }
`);

const names = ['search', 'kind', 'state', 'model', 'depot', 'sort'] as const;

export const useItemsAddress = () => useListAddress(names);
export type ItemsAsked = ReturnType<typeof useItemsAddress>['asked'];

/** Pages of the register as the address asks for it. */
export function useItems(asked: ItemsAsked) {
  const { by, isDescending } = orderOf(asked.sort);
  return useInfiniteQuery({
    queryKey: ['items', ...names.map((name) => asked[name])],
    queryFn: ({ pageParam }) =>
      request(itemsQuery, {
        ...{ search: asked.search, kind: asked.kind || null, state: asked.state || null, model: asked.model || null },
        ...{ depot: asked.depot || null, sort: by || null, descending: isDescending, after: pageParam },
      }),
    initialPageParam: null as string | null,
    getNextPageParam: ({ items }) => (items.pageInfo.hasNextPage ? items.pageInfo.endCursor : undefined),
    placeholderData: keepPreviousData,
  });
}

export type ItemLine = NonNullable<ReturnType<typeof useItems>['data']>['pages'][number]['items']['edges'][number]['node'];
