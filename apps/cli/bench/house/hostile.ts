import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import { ItemsDocument, TickDocument } from '../../../../libs/contracts/graphql.js';
import { demoPeople } from '../../../api/src/features/transfer/demo.js';
import { numberFrom, readArguments, say } from '../arguments.js';
import { makeDemoPlan } from './demo-plan.js';
import type { Sending, Sent } from './hostile-sender.js';
import { cookieOf, freePort, openHouse, password, signIn, startProcess, stopProcess, untilUp } from './house.js';
import { type Bystander, summary, watch } from './bystander.js';

const goalMs = 250;

/**
 * Requests that nobody means well with, twenty kinds of them, while one person works: how long that one waits, beside the same on the idle house. `--requests`
 * of them, `--at-once` at a time.
 */
export async function run(args: readonly string[], root: string): Promise<number> {
  const values = readArguments(args);
  const [requests, atOnce] = [numberFrom(values, 'requests', 500), numberFrom(values, 'at-once', 4)];
  const house = await openHouse(root);
  const planId = await makeDemoPlan(house.dataSource);
  const port = await freePort();
  const api = startProcess(root, 'api', { DATABASE_URL: house.databaseUrl, PORT: String(port), CARTWRIGHT_LOG_LEVEL: 'fatal' });
  try {
    const address = `http://127.0.0.1:${port}`;
    await untilUp(address);
    const ask = await signIn(address, 'warehouse');
    const bystander: Bystander = {
      healthz: async () => (await fetch(`${address}/healthz`)).text(),
      registerPage: () => ask(ItemsDocument.toString()),
      tick: (round) => ask(TickDocument.toString(), { planId, what: 'T1 row 1', done: round % 2 === 0 }),
    };
    await watch(bystander, (round) => round < 20);
    const idle = await watch(bystander, (round) => round < 150);
    const cookie = await cookieOf(address, demoPeople.find(({ role }) => role === 'system')?.email ?? '', password);
    const sending: Sending = { address, cookie, requests, atOnce, seed: numberFrom(values, 'seed', 1) };
    const sender = new Worker(new URL('./hostile-sender.js', import.meta.url), { workerData: sending });
    let told: Sent | undefined;
    const ended = once(sender, 'message').then(([sent]) => (told = sent as Sent));
    const busy = await watch(bystander, () => told === undefined);
    const { sent, wrong } = await ended;
    let isWithin = wrong.length === 0;
    for (const part of Object.keys(bystander)) {
      const [before, during] = [summary(idle[part] ?? []), summary(busy[part] ?? [])];
      isWithin &&= during.p99 <= goalMs;
      say(`${part.padEnd(13)} idle ${JSON.stringify(before)}  meanwhile ${JSON.stringify(during)}`);
    }
    wrong.slice(0, 20).forEach(say);
    say(JSON.stringify({ sent, wronglyAnswered: wrong.length, stillUp: api.exitCode === null, isWithin }));
    return isWithin && api.exitCode === null ? 0 : 1;
  } finally {
    await stopProcess(api, 'SIGTERM');
    await house.close();
  }
}
