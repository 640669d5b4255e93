import { useInfiniteQuery } from '@tanstack/react-query';
import { graphql } from '#contracts';
import { request } from '../../../platform/request.js';

const recordsQuery = graphql(`
  query ItemRecords($id: ID!, $after: String) {
    item(id: $id) {
      records(first: 20, after: $after) {
        pageInfo { hasNextPage endCursor }
        edges { node { id examination recordedBy recordedAt supersededBy supersedes reason file { id name type sizeBytes sha256 } kept lines } }
      }
    }
  }
`);

const historyQuery = graphql(`
  query ItemHistory($id: ID!, $after: String) {
    item(id: $id) {
      history(first: 20, after: $after) { pageInfo { hasNextPage endCursor } edges { node { at who what sentence } } }
    }
  }
`);

/** Examinations of an item, twenty at a time, the newest first. */
export function useItemRecords(id: string) {
  return useInfiniteQuery({
    queryKey: ['item', id, 'records'],
    queryFn: async ({ pageParam }) => (await request(recordsQuery, { id, after: pageParam })).item.records,
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
  });
}

/** What happened to an item, twenty at a time, the newest first. */
export function useItemHistory(id: string) {
  return useInfiniteQuery({
    queryKey: ['item', id, 'history'],
    queryFn: async ({ pageParam }) => (await request(historyQuery, { id, after: pageParam })).item.history,
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
  });
}
