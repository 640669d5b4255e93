import { useQuery } from '@tanstack/react-query';
import { graphql } from '#contracts';
import { request } from './request.js';

const meQuery = graphql(`
  query Me { me { id name role mustChange deputyships { officer until depot tourId } onePerson { since until by reason endedBecause } } }
`);

/** Who is signed in, and when one person judged alone in the house. Read before any screen. */
export const useMe = () => useQuery({ queryKey: ['me'], queryFn: () => request(meQuery), staleTime: 0 });

export const useOnePerson = () =>
  useQuery({ queryKey: ['me'], queryFn: () => request(meQuery), staleTime: Number.POSITIVE_INFINITY, select: ({ me }) => me?.onePerson })
    .data ?? [];
