import { readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import {
  AttentionDocument,
  DatesDocument,
  FleetCalendarDocument,
  ItemPageDocument,
  ItemsDocument,
  PlanCartsDocument,
  PlanProgressDocument,
  ShowPageDocument,
  TickDocument,
  ToursDocument,
} from '../../../../libs/contracts/graphql.js';
import { seededRandom } from '#kernel';
import type { Role } from '../../../api/src/platform/sign-in/person.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { summary } from './bystander.js';
import { makeDemoPlan } from './demo-plan.js';
import { benchDay, freePort, openHouse, signIn, startProcess, stopProcess, untilUp } from './house.js';
import { fillHouse } from './made-house.js';
import type { Ask } from './show-page.js';

const goalMs = 200;
const show = { tourId: 'harbour-lights', showId: 'quayside' };
const roles: readonly Role[] = ['warehouse', 'warehouse', 'system', 'safety'];

/** What people do, how often of a hundred times, and whether it writes. */
interface Action {
  readonly of100: number;
  readonly writes?: true;
  readonly run: (ask: Ask, random: () => number, turn: number) => Promise<unknown>;
}

const actionsOf = (planId: string, items: number): Readonly<Record<string, Action>> => {
  const serial = (random: () => number) => `BOX-${String(1 + Math.floor(random() * items * 0.5)).padStart(6, '0')}`;
  return {
    today: { of100: 12, run: (ask) => ask(AttentionDocument.toString(), { role: 'warehouse' }) },
    register: { of100: 14, run: (ask) => ask(ItemsDocument.toString()) },
    search: { of100: 12, run: (ask, random) => ask(ItemsDocument.toString(), { search: serial(random).slice(0, 9) }) },
    item: { of100: 14, run: (ask, random) => ask(ItemPageDocument.toString(), { id: serial(random) }) },
    show: { of100: 12, run: (ask) => ask(ShowPageDocument.toString(), show) },
    carts: { of100: 6, run: (ask) => ask(PlanCartsDocument.toString(), { id: planId }) },
    progress: { of100: 8, run: (ask) => ask(PlanProgressDocument.toString(), { id: planId }) },
    dates: { of100: 4, run: (ask) => ask(DatesDocument.toString(), { first: 100 }) },
    fleet: { of100: 4, run: (ask) => ask(FleetCalendarDocument.toString(), { from: benchDay, days: 60 }) },
    tours: { of100: 4, run: (ask) => ask(ToursDocument.toString()) },
    tick: {
      of100: 10,
      writes: true,
      run: (ask, random, turn) =>
        ask(TickDocument.toString(), { planId, what: `T1 row ${1 + Math.floor(random() * 4)}`, done: turn % 2 === 0 }),
    },
  };
};

interface Told {
  readonly times: ReadonlyMap<string, readonly number[]>;
  readonly faults: readonly string[];
  /** Of the API: once warm, and by each quarter of the time. */
  readonly memoryMb: readonly number[];
}

/**
 * So many people at a house of so many items, each with an action every two seconds whether or not the last was answered (an open loop): milliseconds from
 * the moment when it was due, by kind; the same at a thousand items in the same run.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const [people, seconds] = [numberFrom(values, 'people', 50), numberFrom(values, 'seconds', 60)];
  const [large, small] = [numberFrom(values, 'items', 100_000), 1000];
  const [before, after] = [await measure(root, small, people, seconds), await measure(root, large, people, seconds)];
  const kinds = Object.entries(actionsOf('', large)).map(([kind, action]) => {
    const [a, b] = [summary(before.times.get(kind) ?? []), summary(after.times.get(kind) ?? [])];
    say(`${kind.padEnd(10)} ${small} items ${JSON.stringify(a)}  ${large} items ${JSON.stringify(b)}  ${(b.p50 / a.p50).toFixed(2)} x`);
    return { kind, writes: action.writes === true, p95: b.p95 };
  });
  const all = (told: Told, which: readonly string[]) => summary(which.flatMap((kind) => [...(told.times.get(kind) ?? [])]));
  const reads = kinds.flatMap((each) => (each.writes ? [] : [each.kind]));
  const [readsBefore, readsAfter] = [all(before, reads), all(after, reads)];
  after.faults.slice(0, 5).forEach(say);
  const told = {
    ...{ items: large, people, seconds, readsBefore, readsAfter, growthOfP50: Number((readsAfter.p50 / readsBefore.p50).toFixed(2)) },
    ...{ faults: before.faults.length + after.faults.length, memoryMb: after.memoryMb },
  };
  say(JSON.stringify(told));
  return told.faults === 0 && readsAfter.p95 <= goalMs && told.growthOfP50 < 1.5 ? 0 : 1;
}

async function measure(root: string, items: number, people: number, seconds: number): Promise<Told> {
  const house = await openHouse(root);
  const port = await freePort();
  const planId = await makeDemoPlan(house.dataSource);
  await fillHouse(house.dataSource, items, benchDay);
  const api = startProcess(root, 'api', { DATABASE_URL: house.databaseUrl, PORT: String(port), CARTWRIGHT_LOG_LEVEL: 'fatal' });
  try {
    const address = `http://127.0.0.1:${port}`;
    await untilUp(address);
    const asks: Ask[] = [];
    for (let person = 0; person < people; person++) asks.push(await signIn(address, roles[person % roles.length] ?? 'warehouse'));
    const actions = actionsOf(planId, items);
    // Everything once, unmeasured.
    for (const { run: act } of Object.values(actions)) await act(asks[0] as Ask, seededRandom(1), 0);
    const memory = () => Math.round(Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${api.pid}/status`, 'utf8'))?.[1] ?? 0) / 1024);
    const [times, faults] = [new Map<string, number[]>(), [] as string[]];
    await act(asks, actions, Math.min(10, seconds), new Map(), faults);
    const memoryMb = [memory()];
    const sampling = setInterval(() => memoryMb.push(memory()), (seconds * 1000) / 4);
    await act(asks, actions, seconds, times, faults).finally(() => clearInterval(sampling));
    return { times, faults, memoryMb };
  } finally {
    await stopProcess(api, 'SIGTERM');
    await house.close();
  }
}

/** Each person acts every two seconds, at moments of their own. */
async function act(
  asks: readonly Ask[],
  actions: Readonly<Record<string, Action>>,
  seconds: number,
  times: Map<string, number[]>,
  faults: string[],
): Promise<void> {
  const lots = Object.entries(actions).flatMap(([kind, { of100 }]) => Array.from({ length: of100 }, () => kind));
  const begin = performance.now();
  const under: Promise<void>[] = [];
  const person = async (ask: Ask, index: number): Promise<void> => {
    const random = seededRandom(index + 1);
    for (let turn = 0; ; turn++) {
      const due = begin + 2000 * (turn + index / asks.length);
      if (due > begin + seconds * 1000) return;
      await pause(Math.max(0, due - performance.now()));
      const kind = lots[Math.floor(random() * lots.length)] ?? 'today';
      under.push(one(actions[kind] as Action, kind, ask, random, turn, due));
    }
  };
  const one = async (action: Action, kind: string, ask: Ask, random: () => number, turn: number, due: number): Promise<void> => {
    await action.run(ask, random, turn).catch((fault: Error) => faults.push(`${kind}: ${fault.message.slice(0, 200)}`));
    times.set(kind, [...(times.get(kind) ?? []), performance.now() - due]);
  };
  await Promise.all(asks.map(person));
  await Promise.all(under);
}
