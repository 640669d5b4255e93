import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { Link, useSearchParams } from 'react-router';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { request } from '../../platform/request.js';
import { momentOf } from '../../platform/written.js';
import { More } from '../../ui/more.js';
import { Loaded, Page } from '../../ui/page.js';
import { ChangedRows } from './changed-rows.js';
import { LogFilters } from './log-filters.js';

const logQuery = graphql(`
  query Log($item: ID, $tour: ID, $person: ID, $day: String, $zone: String, $after: String) {
    log(item: $item, tour: $tour, person: $person, day: $day, zone: $zone, first: 50, after: $after) {
      pageInfo { hasNextPage endCursor }
      edges { node { id at doneAt who sentence itemId tourId tourName showId moreRows rows { table key before after } } }
    }
  }
`);
const sealQuery = graphql(`query LogSeal { logSeal { head lines sealedAt } }`);

const wordsOf = (instant: string): string => momentOf(instant);

/** Who did what and when; what is looked for stands in the address. */
export function Log({ me }: { me: Person }) {
  const [asked] = useSearchParams();
  if (me.role === 'warehouse') return <Page title="Log">The log is read by the safety officer and the system tech.</Page>;
  return <LogLines asked={asked} />;
}

function LogLines({ asked }: { asked: URLSearchParams }) {
  const [item, tour, person, day] = ['item', 'tour', 'person', 'day'].map((name) => asked.get(name) || null);
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const filter = { item: item ?? null, tour: tour ?? null, person: person ?? null, day: day ?? null, zone };
  const query = useInfiniteQuery({
    queryKey: ['log', item, tour, person, day],
    queryFn: async ({ pageParam }) => (await request(logQuery, { ...filter, after: pageParam })).log,
    initialPageParam: null as string | null,
    getNextPageParam: ({ pageInfo }) => (pageInfo.hasNextPage ? pageInfo.endCursor : undefined),
    staleTime: 0,
  });
  const seal = useQuery({ queryKey: ['log seal'], queryFn: () => request(sealQuery), staleTime: 0 });
  const file = new URLSearchParams(Object.entries(filter).filter((each): each is [string, string] => each[1] !== null));
  return (
    <Page
      title="Log"
      lede="Who did what and when, newest first, with what was there before and after. Nothing in it can be changed or removed here."
      actions={
        <a className="button plain" href={`/api/csv/log?${file.toString()}`} download>
          CSV of these lines
        </a>
      }
    >
      <LogFilters />
      {seal.data?.logSeal && (
        <p className="quiet">
          Sealed {wordsOf(seal.data.logSeal.sealedAt)} through {seal.data.logSeal.lines} lines. Head{' '}
          <span className="mono" style={{ overflowWrap: 'anywhere' }}>
            {seal.data.logSeal.head}
          </span>
        </p>
      )}
      <Loaded query={query}>
        {({ pages }) => {
          const lines = pages.flatMap((page) => page.edges.map((edge) => edge.node));
          return lines.length === 0 ? <p>No line is like this.</p> : <LogTable lines={lines} />;
        }}
      </Loaded>
      <More of={query} />
    </Page>
  );
}

interface Line {
  readonly id: string;
  readonly at: string;
  readonly doneAt?: string | null;
  readonly who: string;
  readonly sentence: string;
  readonly itemId?: string | null;
  readonly tourId?: string | null;
  readonly tourName?: string | null;
  readonly showId?: string | null;
  readonly moreRows: number;
  readonly rows: readonly { readonly table: string; readonly key?: string | null; readonly before?: unknown; readonly after?: unknown }[];
}

function LogTable({ lines }: { lines: readonly Line[] }) {
  return (
    <div className="scroll">
      <table>
        <thead>
          <tr>
            <th>When</th>
            <th>Who</th>
            <th>What</th>
            <th>About</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.id}>
              <td>
                {wordsOf(line.at)}
                {line.doneAt && <div className="quiet">done {wordsOf(line.doneAt)}</div>}
              </td>
              <td>{line.who}</td>
              <td>
                {line.sentence}
                <ChangedRows rows={line.rows} more={line.moreRows} />
              </td>
              <td>
                <About line={line} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function About({ line: { itemId, tourId, tourName, showId } }: { line: Line }) {
  return (
    <>
      {itemId && (
        <Link className="mono" to={`/register/${encodeURIComponent(itemId)}`}>
          {itemId}
        </Link>
      )}
      {itemId && tourId && ', '}
      {tourId && (
        <Link to={`/tours/${encodeURIComponent(tourId)}${showId ? `/shows/${encodeURIComponent(showId)}` : ''}`}>
          {tourName ?? tourId}
          {showId && `, ${showId}`}
        </Link>
      )}
    </>
  );
}
