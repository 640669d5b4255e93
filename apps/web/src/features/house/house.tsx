import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import type { Person } from '../../platform/person.js';
import { type AnswerOf, request } from '../../platform/request.js';
import { countOf, momentOf } from '../../platform/written.js';
import { Faults } from '../../ui/faults.js';
import { Page, Part } from '../../ui/page.js';
import { tableWords } from './table-words.js';

const stateQuery = graphql(
  `query HouseState { houseState { version upSince databaseBytes tables { name bytes rows changedInMonth grownBytes } sizes { day bytes } grownSince connections connectionsLimit connectionsOfOne lastBackup jobsWaiting jobsRunning jobsFailed oldestWaits plans { kind count seconds } requests turnedAway faults eventLoopMs diskFreeBytes processes } }`,
);

type State = AnswerOf<typeof stateQuery>['houseState'];

/** How often it is read again, ms. */
const everyMs = 10_000;

/** How the house is, for the system tech: the figures that /metrics gives to machines. */
export function House({ me }: { me: Person }) {
  const query = useQuery({
    queryKey: ['house state'],
    queryFn: async () => (await request(stateQuery)).houseState,
    enabled: me.role === 'system',
    refetchInterval: everyMs,
  });
  if (me.role !== 'system') return <Page title="How the house is">The system tech looks at this.</Page>;
  return (
    <Page title="How the house is" lede="The same figures that machines read at /metrics; read again every ten seconds.">
      <Faults of={query.error} />
      {query.data && <Running of={query.data} />}
      {query.data && <Work of={query.data} />}
      {query.data && <Tables of={query.data} />}
      {query.data && <Growth of={query.data} />}
    </Page>
  );
}

const Figure = ({ what, children }: { what: string; children: ReactNode }) => (
  <tr>
    <th scope="row">{what}</th>
    <td className="num">{children}</td>
  </tr>
);

const Figures = ({ children }: { children: ReactNode }) => (
  <table>
    <tbody>{children}</tbody>
  </table>
);

const Running = ({ of }: { of: State }) => (
  <Part
    number={1}
    title="What runs"
    margin={
      <p>
        <Link to="/house/alarms">What to do when one of these is wrong</Link>
      </p>
    }
  >
    <Figures>
      <Figure what="Version">{of.version}</Figure>
      <Figure what="This process is up since">{moment(of.upSince)}</Figure>
      <Figure what="APIs and workers that live">{count(of.processes)}</Figure>
      <Figure what="Database">{size(of.databaseBytes)}</Figure>
      <Figure what="Connections open, of those the server takes">
        {count(of.connections)} of {count(of.connectionsLimit)}
      </Figure>
      <Figure what="Connections that one API or worker may hold">{count(of.connectionsOfOne)}</Figure>
      <Figure what="Last backup">{of.lastBackup === null ? 'none yet' : moment(of.lastBackup)}</Figure>
      <Figure what="Free on the disk of the program">{size(of.diskFreeBytes)}</Figure>
    </Figures>
  </Part>
);

const Work = ({ of }: { of: State }) => (
  <Part number={2} title="What it does" margin={<p>Requests, refusals, faults and plans: of this process since it started.</p>}>
    <Figures>
      <Figure what="Jobs that wait">
        {countOf(of.jobsWaiting)}
        {of.jobsWaiting > 0 && `, the oldest for ${of.oldestWaits ?? 0} s`}
      </Figure>
      <Figure what="Jobs that run">{countOf(of.jobsRunning)}</Figure>
      <Figure what="Jobs that failed, of those on file">{countOf(of.jobsFailed)}</Figure>
      {of.plans.map((each) => (
        <Figure key={each.kind} what={`Plans made (${each.kind}), on average`}>
          {countOf(each.count)}, {each.seconds.toFixed(1)} s
        </Figure>
      ))}
      <Figure what="Requests">{countOf(of.requests)}</Figure>
      <Figure what="Turned away at the door">{countOf(of.turnedAway)}</Figure>
      <Figure what="Faults of the program">{countOf(of.faults)}</Figure>
      <Figure what="Longest that a request waits for the processor (99 of 100)">
        {of.eventLoopMs === null ? 'not known' : `${of.eventLoopMs.toFixed(0)} ms`}
      </Figure>
    </Figures>
  </Part>
);

const Tables = ({ of }: { of: State }) => (
  <Part
    number={3}
    title="What it keeps"
    margin={
      <p>Rows as the database last counted them. Changed: by the log, a line for each row that was written; some leave no lines there.</p>
    }
  >
    <table className="tight blocks">
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col" className="num">
            Size
          </th>
          <th scope="col" className="num">
            Rows
          </th>
          <th scope="col" className="num">
            Grown {since(of.grownSince)}
          </th>
          <th scope="col" className="num">
            Changed in 30 days
          </th>
        </tr>
      </thead>
      <tbody>
        {of.tables.map((each) => (
          <tr key={each.name}>
            <td>
              <b>{tableWords(each.name)}</b>
            </td>
            <td className="num" data-name="Size">
              {size(each.bytes)}
            </td>
            <td className="num" data-name="Rows">
              {countOf(each.rows)}
            </td>
            <td className="num" data-name={`Grown ${since(of.grownSince)}`}>
              {each.grownBytes === null ? 'not known yet' : `${each.grownBytes < 0 ? '−' : ''}${size(Math.abs(each.grownBytes))}`}
            </td>
            <td className="num" data-name="Changed in 30 days">
              {each.changedInMonth === null ? 'not counted' : countOf(each.changedInMonth)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </Part>
);

const count = (value: number | null): string => (value === null ? 'not known' : countOf(value));
const moment = (value: unknown): string => momentOf(String(value));

function size(bytes: number | null): string {
  if (bytes === null) return 'not known';
  const units = ['B', 'kB', 'MB', 'GB', 'TB'];
  const step = Math.min(units.length - 1, Math.floor(Math.log(Math.max(1, bytes)) / Math.log(1000)));
  return `${(bytes / 1000 ** step).toFixed(step === 0 ? 0 : 1)} ${units[step]}`;
}

const since = (day: string | null): string => (day === null ? 'in 30 days' : `since ${day}`);

/** The database day by day, and month by month before. */
const Growth = ({ of }: { of: State }) => (
  <Part number={4} title="How it grew" margin={<p>The house writes its size down once a day, and keeps it for ten years.</p>}>
    <table className="tight">
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col" className="num">
            Database
          </th>
        </tr>
      </thead>
      <tbody>
        {of.sizes.map((each) => (
          <tr key={each.day}>
            <td>{each.day}</td>
            <td className="num">{size(each.bytes)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </Part>
);
