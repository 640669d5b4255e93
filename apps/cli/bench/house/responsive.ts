import { setTimeout as pause } from 'node:timers/promises';
import { ItemsDocument, ShowPageDocument, type ShowPageQuery, TickDocument } from '../../../../libs/contracts/graphql.js';
import { Trouble } from '#runtime';
import { numberFrom, readArguments, say } from '../arguments.js';
import { addFreightTour, freePort, openHouse, signIn, startProcess, stopProcess, untilUp } from './house.js';
import { summary, watch } from './bystander.js';
import { type Ask, openShowPage } from './show-page.js';

const parts = ['healthz', 'showHead', 'showPage', 'registerPage', 'tick'] as const;
type Part = (typeof parts)[number];
type Times = Record<Part, number[]>;

const tick = TickDocument.toString();
const make =
  'mutation($tour: ID!, $show: ID!) { makePackPlan(tourId: $tour, showId: $show, waitMs: 0) { ... on JobUnderWay { job { id } } } }';
const search = 'mutation($tour: ID!, $show: ID!) { startSearch(tourId: $tour, showId: $show) { id } }';
const show = { tourId: 'harbour-lights', showId: 'quayside' };
const release =
  'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a bench, nothing flies") { __typename ... on StopRefusal { sentence stops { sentence } } ... on StaleRefusal { sentence changed { sentence } } } }';
const job = 'query($id: ID!) { job(id: $id) { state sentence } }';

/**
 * How long requests take while four plans of the demo and one large truck load are being made, beside the same on the idle machine: the API in a
 * process of its own, as `npm start` runs it, asked by one client that always waits for its answer.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const idleRounds = numberFrom(values, 'rounds', 150);
  const pieces = numberFrom(values, 'pieces', 800);
  const house = await openHouse(root);
  const port = await freePort();
  const freight = await addFreightTour(house, root, pieces);
  const api = startProcess(root, 'api', { DATABASE_URL: house.databaseUrl, PORT: String(port) });
  try {
    const address = `http://127.0.0.1:${port}`;
    await untilUp(address);
    const ask = await signIn(address, 'system');
    const start = async (tour: string, show: string) =>
      ((await ask(make, { tour, show })) as { makePackPlan: { job: { id: string } } }).makePackPlan.job.id;
    const isOver = async (id: string) =>
      !['waiting', 'running'].includes(((await ask(job, { id })) as { job: { state: string } }).job.state);
    const first = await start('harbour-lights', 'quayside');
    while (!(await isOver(first))) await pause(200);
    // A show that is planned meanwhile keeps its draft under another id: ticks go to a released plan, which stays.
    const { draft } = ((await ask(ShowPageDocument.toString(), show)) as ShowPageQuery).showPage;
    if (!draft) throw new Trouble(`The first plan of the demo was not made: ${JSON.stringify(await ask(job, { id: first }))}`);
    const officer = await signIn(address, 'safety');
    const { releasePackPlan } = (await officer(release, { id: draft.id })) as { releasePackPlan: { __typename: string } };
    if (releasePackPlan.__typename !== 'PlanView') throw new Trouble(`The plan was not released: ${JSON.stringify(releasePackPlan)}`);
    const times = { idle: emptyTimes(), busy: emptyTimes() };
    await measure(address, ask, draft.id, emptyTimes(), (round) => Promise.resolve(round < 20));
    await measure(address, ask, draft.id, times.idle, (round) => Promise.resolve(round < idleRounds));
    const from = performance.now();
    const jobs = [await start(freight.tourId, freight.showId)];
    for (const planned of ['old-mill', 'fenland', 'quayside']) jobs.push(await start('harbour-lights', planned));
    // Asked for again, a show that is being planned is not planned twice: the fourth is a longer search.
    jobs.push(((await ask(search, { tour: 'harbour-lights', show: 'old-mill' })) as { startSearch: { id: string } }).startSearch.id);
    await measure(address, ask, draft.id, times.busy, async (round) => round % 10 !== 0 || !(await areOver(jobs, isOver)));
    const made: object[] = await house.dataSource.query(
      `SELECT kind, state, stopped_by AS "stoppedBy", round(extract(epoch FROM ended_at - started_at)::numeric, 1)::float AS seconds
       FROM job WHERE id = ANY($1) ORDER BY number`,
      [jobs],
    );
    return report(times, { plans: jobs.length, planSeconds: Number(((performance.now() - from) / 1000).toFixed(1)), made });
  } finally {
    await stopProcess(api, 'SIGTERM');
    await house.close();
  }
}

const emptyTimes = (): Times => ({ healthz: [], showHead: [], showPage: [], registerPage: [], tick: [] });

async function areOver(jobs: readonly string[], isOver: (id: string) => Promise<boolean>): Promise<boolean> {
  for (const id of jobs) if (!(await isOver(id))) return false;
  return true;
}

/** One of each, one after another, while `more` says so. */
async function measure(address: string, ask: Ask, planId: string, times: Times, more: (round: number) => Promise<boolean>): Promise<void> {
  for (let round = 0; await more(round); round++) {
    const bystander: Record<Part, () => Promise<unknown>> = {
      healthz: async () => (await fetch(`${address}/healthz`)).text(),
      showHead: () => ask(ShowPageDocument.toString(), show),
      showPage: () => openShowPage(ask, show.tourId, show.showId),
      registerPage: () => ask(ItemsDocument.toString()),
      tick: () => ask(tick, { planId, what: 'T1 row 1', done: round % 2 === 0 }),
    };
    const once = await watch(bystander, (turn) => turn === 0);
    for (const part of parts) times[part].push(...(once[part] ?? []));
  }
}

function report(times: { readonly idle: Times; readonly busy: Times }, about: object): number {
  let isWithin = true;
  const rows = Object.fromEntries(
    parts.map((part) => {
      const [idle, busy] = [summary(times.idle[part]), summary(times.busy[part])];
      isWithin &&= busy.p95 - idle.p95 <= 50 && busy.p99 - idle.p99 <= 250;
      say(`${part.padEnd(13)} idle ${JSON.stringify(idle)}  busy ${JSON.stringify(busy)}`);
      return [part, { idle, busy }];
    }),
  );
  say(JSON.stringify({ ...about, isWithin, milliseconds: rows }));
  return isWithin ? 0 : 1;
}
