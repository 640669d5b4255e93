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
const answerAll = 'mutation($through: ID!) { answerAllProposals(through: $through, accept: true, reason: "a bench") { id } }';
const incident = 'mutation($on: String!, $what: String!) { recordIncident(itemId: "H-01", on: $on, what: $what) { summary { id } } }';

/**
 * A file of `--rows` new boxes (`--accept yes`: which the safety officer then accepts; `--kind examinations`: of an examiner's list, ten records for each of so many boxes) comes into a house that keeps its writes, sent as the screen sends it and followed to its end, while somebody reads the register,
 * ticks rows and writes into the register; their waits stand beside those of the idle house.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const [rows, idleRounds] = [numberFrom(values, 'rows', 100_000), numberFrom(values, 'rounds', 60)];
  const isExaminations = kindFrom(values) === 'examinations';
  const house = await openHouse(root, true);
  const port = await freePort();
  const address = `http://127.0.0.1:${port}`;
  const api = startProcess(root, 'api', { DATABASE_URL: house.databaseUrl, PORT: String(port), CARTWRIGHT_LOG_LEVEL: 'error' });
  try {
    await untilUp(address);
    const somebody = await somebodyAtWork(address);
    await watch(somebody, (round) => round < 10);
    const before = await watch(somebody, (round) => round < idleRounds);
    if (isExaminations) {
      const boxes = await send(address, 'items/box', boxLines(Math.ceil(rows / examinationsOfBox)), 'warehouse');
      if ((await follow(address, boxes, () => undefined)).state !== 'done') throw new Trouble('The boxes did not come in.');
    }
    const from = performance.now();
    const id = isExaminations
      ? await send(address, 'examinations', examinationLines(rows), 'safety')
      : await send(address, 'items/box', boxLines(rows), 'warehouse');
    const taken = performance.now() - from;
    let last: View | undefined;
    const [during, ended] = await Promise.all([
      watch(somebody, () => last === undefined || last.state === 'going'),
      follow(address, id, (view) => (last = view)),
    ]);
    const seconds = (performance.now() - from) / 1000;
    if (ended.state !== 'done' || ended.outcome?.added !== rows) throw new Trouble(`It did not come in: ${JSON.stringify(ended)}`);
    const milliseconds = waits(before, during);
    const acceptance = values.has('accept') ? await accept(address, somebody, before) : undefined;
    say(
      JSON.stringify({
        ...{ kind: isExaminations ? 'examinations' : 'items', rows },
        ...{ takenMs: Math.round(taken), seconds: Number(seconds.toFixed(1)), rowsPerSecond: Math.round(rows / seconds), milliseconds },
        ...(acceptance && { acceptance }),
      }),
    );
    return 0;
  } finally {
    await stopProcess(api, 'SIGTERM');
    await house.close();
  }
}

type Waits = Awaited<ReturnType<typeof watch>>;

function waits(before: Waits, during: Waits) {
  return Object.fromEntries(
    Object.keys(before).map((part) => {
      const [idle, busy] = [summary(before[part] ?? []), summary(during[part] ?? [])];
      say(`${part.padEnd(10)} before ${JSON.stringify(idle)}  during ${JSON.stringify(busy)}`);
      return [part, { before: idle, during: busy }];
    }),
  );
}

/** The safety officer accepts all that waits, in one act; the others go on. */
async function accept(address: string, somebody: Bystander, before: Waits) {
  const officer = await signIn(address, 'safety');
  const { proposals } = (await officer('{ proposals(first: 1) { newest totalCount } }')) as { proposals: { newest: string } };
  const from = performance.now();
  await officer(answerAll, { through: proposals.newest });
  let last: Answering = { isGoing: true, total: 0, answered: 0, looked: 0 };
  const follow = async () => {
    for (; last.isGoing; await pause(500))
      last = ((await officer('{ latestProposalAnswering { isGoing total answered looked } }')) as { latestProposalAnswering: Answering })
        .latestProposalAnswering;
  };
  const [during] = await Promise.all([watch(somebody, () => last.isGoing), follow()]);
  if (last.answered !== last.total) throw new Trouble(`Not all was accepted: ${JSON.stringify(last)}`);
  const seconds = (performance.now() - from) / 1000;
  say(`${last.answered} accepted in ${seconds.toFixed(1)} s`);
  return { proposals: last.answered, seconds: Number(seconds.toFixed(1)), milliseconds: waits(before, during) };
}

interface Answering {
  readonly isGoing: boolean;
  readonly total: number;
  readonly answered: number;
  readonly looked: number;
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

const examinationsOfBox = 10;

function kindFrom(values: ReadonlyMap<string, string>): 'items' | 'examinations' {
  const kind = values.get('kind') ?? 'items';
  if (kind === 'items' || kind === 'examinations') return kind;
  throw new Trouble(`--kind is ${kind}: wanted items or examinations.`);
}

const serialOf = (number: number): string => `IN-${String(number).padStart(6, '0')}`;

const boxLines = (rows: number): readonly string[] => [
  'serial,model,state,depot',
  ...Array.from({ length: rows }, (_, index) => `${serialOf(index + 1)},Plover,in service,Ferry Lane`),
];

/** Ten years of records of each box, all passed. */
const examinationLines = (rows: number): readonly string[] => [
  'serial,pieces,examined on,kind of examination,outcome,examiner,report,next no later than,remarks',
  ...Array.from({ length: rows }, (_, index) => {
    const year = 2016 + (index % examinationsOfBox);
    return `${serialOf(Math.floor(index / examinationsOfBox) + 1)},,${year}-02-01,,pass,B. Ropemaker,R-${index + 1},,`;
  }),
];

async function send(address: string, of: string, lines: readonly string[], role: string): Promise<string> {
  const cookie = await cookieOf(address, demoPeople.find((each) => each.role === role)?.email ?? '', password);
  const response = await fetch(`${address}/api/imports/${of}?dryRun=false`, {
    method: 'POST',
    headers: { 'content-type': 'text/csv', 'x-cartwright': '1', cookie },
    body: lines.join('\r\n'),
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
