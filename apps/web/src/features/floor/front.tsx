import { useState } from 'react';
import { Link } from 'react-router';
import type { FloorJob } from '#pack-plan';
import { useSettings } from '../../platform/settings.js';
import { Faults } from '../../ui/faults.js';
import { Note } from '../../ui/notes.js';
import { InTheAirNotes, useBarred } from '../plan/barred-notes.js';
import { sentencesOf } from '../plan/sentences-of.js';
import { FloorPage } from './page/floor-page.js';
import type { OnFloor } from './page/on-floor.js';
import { isSilent, setSilent } from './page/signal.js';
import { useFloorState } from './use-floor-state.js';

const titles: Readonly<Record<FloorJob['code'], string>> = {
  'do-not-load': 'Do not load',
  moves: 'Box moves',
  carts: 'Carts to confirm',
  rows: 'Trucks',
  lift: 'Flying',
  return: 'Return',
};

const isBarred = ({ code }: FloorJob): boolean => code === 'do-not-load';

/** What to do now, in the order of the work, each a tap away. */
export function Front({ me, show, plan, home }: OnFloor) {
  const { now, fault } = useFloorState(plan);
  const barred = useBarred(plan.id).items;
  const desk = `/tours/${show.tourId}/shows/${show.showId}`;
  const next = now?.jobs.find((each) => each.code === now.next);
  const to = (job: FloorJob) => pathOf(job, home, desk);
  const line = (job: FloorJob) => (
    <Link key={job.code} className={isBarred(job) ? 'job stop' : job.code === now?.next ? 'job next' : 'job'} to={to(job)}>
      <b>{titles[job.code]}</b>
      <span>{told(job, barred)}</span>
      <div className="n">{count(job)}</div>
    </Link>
  );
  return (
    <FloorPage
      name={`${show.name}, the floor`}
      title={show.name}
      back="/"
      foot={
        <>
          <div className="two">
            <Link className="btn plain" to={`${home}/carts`}>
              Scan or type a cart
            </Link>
            <Link className="btn warn" to={`${home}/fault`}>
              Something is wrong
            </Link>
          </div>
          {next && (
            <Link className="btn big" to={to(next)}>
              {wayOn[next.code]}
            </Link>
          )}
        </>
      }
    >
      <h2>What to do now</h2>
      <p className="lede">
        {plan.show.venue}, {plan.show.from} · {plan.revision ? `revision ${plan.revision}` : 'draft, not released'} · {me.name}
      </p>
      {show.released && show.draft && (
        <Note weight="look">A newer draft waits at the desk; this is revision {show.released.revision}.</Note>
      )}
      {plan.changed.length > 0 && (
        <Note weight="look">This plan is stale: {sentencesOf(plan.changed.slice(0, 2))}. It is planned again at the desk.</Note>
      )}
      <InTheAirNotes planId={plan.id} />
      <Faults of={fault} />
      {!now && !fault && <p className="quiet">Reading ...</p>}
      {now?.jobs.filter(isBarred).map(line)}
      <Link className="job" to={`${home}/prep`}>
        <b>Prep</b>
        <span>pick list, bench tests, splays, trunks, what leaves</span>
      </Link>
      {now?.jobs.filter((job) => !isBarred(job)).map(line)}
      <Switches desk={desk} />
    </FloorPage>
  );
}

const wayOn: Readonly<Record<FloorJob['code'], string>> = {
  'do-not-load': 'What must not fly',
  moves: 'Next box move',
  carts: 'Confirm the next cart',
  rows: 'Load the next row',
  lift: 'Fly',
  return: 'Scan carts in',
};

function pathOf(job: FloorJob, home: string, desk: string): string {
  switch (job.code) {
    case 'do-not-load':
      return job.items.length === 1 ? `/register/${encodeURIComponent(job.items[0] ?? '')}` : desk;
    case 'moves':
      return `${home}/moves`;
    case 'carts':
      return job.next ? `${home}/carts/${encodeURIComponent(job.next.load)}` : `${home}/carts`;
    case 'rows':
      return job.next ? `${home}/trucks/${encodeURIComponent(job.next.truck)}` : `${home}/trucks`;
    case 'lift':
      return `${home}/fly`;
    case 'return':
      return `${home}/return`;
  }
}

function told(job: FloorJob, barred: readonly { readonly sentence: string }[]): string {
  switch (job.code) {
    case 'do-not-load':
      return [...new Set(barred.map((each) => each.sentence))].join(' ');
    case 'moves':
      if (!job.isPossible) return 'cannot be listed: open to see why';
      return job.next ? `next: ${job.next.box} from ${place(job.next.from)} to ${place(job.next.to)}` : 'every cart stands as it is wanted';
    case 'carts':
      return job.next ? `next: ${job.next.cart ?? 'no cart'}, ${job.next.load}` : 'all confirmed';
    case 'rows':
      return job.next ? `next: ${job.next.truck}, row ${job.next.row}` : 'all rows are in';
    case 'lift':
      return job.left === null ? 'reading ...' : job.next ? `next: ${job.next.name}` : 'all holds are ticked';
    case 'return':
      return 'scan carts in, count pins and small hardware, see what is missing';
  }
}

const place = (name: string): string => (name === 'floor' ? 'the floor' : name);

function count(job: FloorJob) {
  if (job.code === 'return') return <small>open</small>;
  if (job.code === 'do-not-load') return job.left;
  if (job.code === 'moves')
    return job.isPossible ? (
      <>
        {job.left} <small>left</small>
      </>
    ) : (
      '■'
    );
  if (job.left === null) return null;
  return (
    <>
      {job.left}
      <small> of {job.of} left</small>
    </>
  );
}

/** Light and sound of the floor are its own, kept on this device. */
function Switches({ desk }: { desk: string }) {
  const { light, setLight } = useSettings();
  const [silent, setSilence] = useState(isSilent);
  const press = () => {
    setSilent(!silent);
    setSilence(!silent);
  };
  return (
    <p className="row">
      <button type="button" className="plain" onClick={() => setLight(light === 'dark' ? 'day' : 'dark')}>
        {light === 'dark' ? 'For daylight' : 'For the dark'}
      </button>
      <button type="button" className="plain" aria-pressed={silent} onClick={press}>
        {silent ? 'Sound on' : 'Sound off'}
      </button>
      <Link className="btn plain" to={desk}>
        The whole show
      </Link>
    </p>
  );
}
