import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { useSearchParams } from 'react-router';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { type AnswerOf, request } from '../../platform/request.js';
import { countOf, momentOf } from '../../platform/written.js';
import { More } from '../../ui/more.js';
import { Loaded, Page } from '../../ui/page.js';
import { About } from './about.js';
import { ActLines, type Filter } from './act-lines.js';
import { ChangedRows } from './changed-rows.js';
import { LogFilters } from './log-filters.js';

const actsQuery = graphql(`
  query LogActs($item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {
    logActs(item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: 40, after: $after) {
      pageInfo { hasNextPage endCursor }
      edges { node { id lines isMoreThanCounted line { id at doneAt who sentence itemId tourId tourName showId moreRows rows { table key before after } } } }
    }
  }
`);
const sealQuery = graphql(`query LogSeal { logSeal { head lines sealedAt } }`);

/** Who did what and when; what is looked for stands in the address. */
export function Log({ me }: { me: Person }) {
  const [asked] = useSearchParams();
  if (me.role === 'warehouse') return <Page title="Log">The log is read by the safety officer and the system tech.</Page>;
  return <LogLines asked={asked} />;
}

function LogLines({ asked }: { asked: URLSearchParams }) {
  const [item, tour, person, day] = ['item', 'tour', 'person', 'day'].map((name) => asked.get(name) || null);
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const filter: Filter = { item: item ?? null, tour: tour ?? null, person: person ?? null, day: day ?? null, zone };
  const query = useInfiniteQuery({
    queryKey: ['log', item, tour, person, day],
    queryFn: async ({ pageParam }) => (await request(actsQuery, { ...filter, after: pageParam })).logActs,
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
    staleTime: 0,
  });
  const seal = useQuery({ queryKey: ['log seal'], queryFn: () => request(sealQuery), staleTime: 0 });
  const file = new URLSearchParams(Object.entries(filter).filter((each): each is [string, string] => each[1] !== null));
  return (
    <Page
      title="Log"
      lede={`Who did what and when, newest first, with what was there before and after. What was done at once is one line. Nothing in it can be changed or removed here. Times are those of ${zone}.`}
      actions={
        <a className="button plain" href={`/api/csv/log?${file.toString()}`} download>
          CSV of these lines
        </a>
      }
    >
      <LogFilters />
      {seal.data?.logSeal && (
        <p className="quiet">
          Sealed {momentOf(seal.data.logSeal.sealedAt)} through {countOf(seal.data.logSeal.lines)} lines. Head{' '}
          <span className="mono" style={{ overflowWrap: 'anywhere' }}>
            {seal.data.logSeal.head}
          </span>
        </p>
      )}
      <Loaded query={query}>
        {({ pages }) => {
          const acts = pages.flatMap((page) => page.edges.map((edge) => edge.node));
          return acts.length === 0 ? <p>No line is like this.</p> : <LogTable acts={acts} filter={filter} />;
        }}
      </Loaded>
      <More of={query} />
    </Page>
  );
}

type Act = AnswerOf<typeof actsQuery>['logActs']['edges'][number]['node'];

function LogTable({ acts, filter }: { acts: readonly Act[]; filter: Filter }) {
  return (
    <table className="blocks">
      <thead>
        <tr>
          <th>When</th>
          <th>Who</th>
          <th>What</th>
          <th>About</th>
        </tr>
      </thead>
      <tbody>
        {acts.map(({ id, lines, isMoreThanCounted, line }) => (
          <tr key={id}>
            <td data-name="When">
              <span>
                <span className="nobreak">{momentOf(line.at)}</span>
                {line.doneAt && <span className="quiet"> done {momentOf(line.doneAt)}</span>}
              </span>
            </td>
            <td data-name="Who">
              <span className="anywhere">{line.who}</span>
            </td>
            <td data-name="What">
              <div className="anywhere">
                {line.sentence}
                {lines === 1 ? (
                  <ChangedRows rows={line.rows} more={line.moreRows} />
                ) : (
                  <ActLines act={id} count={`${isMoreThanCounted ? 'more than ' : ''}${countOf(lines)}`} filter={filter} />
                )}
              </div>
            </td>
            <td data-name="About">
              <About line={lines === 1 ? line : { ...line, itemId: null }} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
