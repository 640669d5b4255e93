import { useInfiniteQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { More } from '../../ui/more.js';
import { Loaded } from '../../ui/page.js';
import { About } from './about.js';
import { ChangedRows } from './changed-rows.js';

const linesQuery = graphql(`
  query LogLines($act: ID, $item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {
    log(act: $act, item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: 50, after: $after) {
      pageInfo { hasNextPage endCursor }
      edges { node { id sentence itemId tourId tourName showId moreRows rows { table key before after } } }
    }
  }
`);

export type Filter = Readonly<Record<'item' | 'tour' | 'person' | 'day' | 'zone', string | null>>;

/** The lines of an act, read when they are asked for. */
export function ActLines({ act, count, filter }: { act: string; count: string; filter: Filter }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{count} lines</summary>
      {isOpen && <Lines act={act} filter={filter} />}
    </details>
  );
}

function Lines({ act, filter }: { act: string; filter: Filter }) {
  const query = useInfiniteQuery({
    queryKey: ['log', 'act', act, filter],
    queryFn: async ({ pageParam }) => (await request(linesQuery, { ...filter, act, after: pageParam })).log,
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
  });
  return (
    <>
      <Loaded query={query}>
        {({ pages }) => (
          <ul className="plain">
            {pages.flatMap((page) =>
              page.edges.map(({ node }) => (
                <li key={node.id} className="record">
                  <p>
                    {node.sentence} <About line={node} />
                  </p>
                  <ChangedRows rows={node.rows} more={node.moreRows} />
                </li>
              )),
            )}
          </ul>
        )}
      </Loaded>
      <More of={query} />
    </>
  );
}
