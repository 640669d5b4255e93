import { setTimeout as pause } from 'node:timers/promises';
import { CsvImportDocument, type CsvImportQuery, ItemsDocument, TickDocument } from '../../../../libs/contracts/graphql.js';
import { Trouble } from '#runtime';
import { numberFrom, readArguments, say } from '../arguments.js';
import { type Bystander, summary, watch } from './bystander.js';
import { cookieOf, freePort, openHouse, password, signIn, startProcess, stopProcess, untilUp } from './house.js';
import { demoPeople } from '../../../api/src/features/transfer/demo.js';

type View = CsvImportQuery['csvImport'];

const plan =
  'mutation($tour: ID!, $show: ID!) { makePackPlan(tourId: $tour, showId: $show, waitMs: 60000) { ... on PlanMade { plan { id } } } }';
const release = 'mutation($id: ID!) { releasePackPlan(planId: $id, despite: "a bench, nothing flies") { __typename } }';
const incident = 'mutation($on: String!, $what: String!) { recordIncident(itemId: "H-01", on: $on, what: $what) { summary { id } } }';

/**
 * A file of `--rows` new boxes comes into a house that keeps its writes, sent as the screen sends it and followed to its end, while somebody reads the register,
 * ticks rows and writes into the register; their waits stand beside those of the idle house.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const [rows, idleRounds] = [numberFrom(values, 'rows', 100_000), numberFrom(values, 'rounds', 60)];
  const house = await openHouse(root, true);
  const port = await freePort();
  const address = `http://127.0.0.1:${port}`;
  const api = startProcess(root, 'api', { DATABASE_URL: house.databaseUrl, PORT: String(port), CARTWRIGHT_LOG_LEVEL: 'error' });
  try {
    await untilUp(address);
    const somebody = await somebodyAtWork(address);
    await watch(somebody, (round) => round < 10);
    const before = await watch(somebody, (round) => round < idleRounds);
    const from = performance.now();
    const id = await send(address, rows);
    const taken = performance.now() - from;
    let last: View | undefined;
    const [during, ended] = await Promise.all([
      watch(somebody, () => last === undefined || last.state === 'going'),
      follow(address, id, (view) => (last = view)),
    ]);
    const seconds = (performance.now() - from) / 1000;
    if (ended.state !== 'done' || ended.outcome?.added !== rows) throw new Trouble(`It did not come in: ${JSON.stringify(ended)}`);
    const milliseconds = Object.fromEntries(
      Object.keys(before).map((part) => {
        const [idle, busy] = [summary(before[part] ?? []), summary(during[part] ?? [])];
        say(`${part.padEnd(10)} before ${JSON.stringify(idle)}  during ${JSON.stringify(busy)}`);
        return [part, { before: idle, during: busy }];
      }),
    );
    say(
      JSON.stringify({
        rows,
        ...{ takenMs: Math.round(taken), seconds: Number(seconds.toFixed(1)), rowsPerSecond: Math.round(rows / seconds), milliseconds },
      }),
    );
    return 0;
  } finally {
    await stopProcess(api, 'SIGTERM');
    await house.close();
  }
}

/** One who looks, one who loads, one who keeps the register. */
async function somebodyAtWork(address: string): Promise<Bystander> {
  const [ask, officer] = [await signIn(address, 'system'), await signIn(address, 'safety')];
  const made = (await ask(plan, { tour: 'harbour-lights', show: 'quayside' })) as { makePackPlan: { plan: { id: string } } };
  const planId = made.makePackPlan.plan.id;
  await officer(release, { id: planId });
  return {
    healthz: async () => (await fetch(`${address}/healthz`)).text(),
    register: () => ask(ItemsDocument.toString()),
    tick: (round) => ask(TickDocument.toString(), { planId, what: 'T1 row 1', done: round % 2 === 0 }),
    incident: (round) => ask(incident, { on: '2026-02-01', what: `looked at ${round}` }),
  };
}

async function send(address: string, rows: number): Promise<string> {
  const cookie = await cookieOf(address, demoPeople.find(({ role }) => role === 'warehouse')?.email ?? '', password);
  const lines = Array.from({ length: rows }, (_, index) => `IN-${String(index + 1).padStart(6, '0')},Plover,in service,Ferry Lane`);
  const response = await fetch(`${address}/api/imports/items/box?dryRun=false`, {
    method: 'POST',
    headers: { 'content-type': 'text/csv', 'x-cartwright': '1', cookie },
    body: ['serial,model,state,depot', ...lines].join('\r\n'),
  });
  if (response.status !== 202) throw new Trouble(`The file was not taken: ${response.status} ${await response.text()}`);
  return ((await response.json()) as { id: string }).id;
}

async function follow(address: string, id: string, tell: (view: View) => void): Promise<View> {
  const ask = await signIn(address, 'warehouse');
  for (let step = ''; ; await pause(500)) {
    const view = ((await ask(CsvImportDocument.toString(), { id })) as CsvImportQuery).csvImport;
    if (view.step !== step)
      say(`${String(view.seconds).padStart(4)} s ${view.step}: ${view.rowsChecked} checked, ${view.rowsWritten} written`);
    step = view.step;
    tell(view);
    if (view.state !== 'going') return view;
  }
}
