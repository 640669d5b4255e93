import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { DataSource } from 'typeorm';
import { Trouble, startEmbeddedDatabase } from '#runtime';
import { createApp } from '../../../api/src/create-app.js';
import { migrate } from '../../../api/src/data-source.js';
import { demoPeople, loadDemo } from '../../../api/src/features/transfer/demo.js';
import { configOf } from '../../../api/src/platform/config/config.js';
import { hashOfOperation } from '../../../api/src/platform/door/listed-operations.js';
import { TourFileService } from '../../../api/src/features/transfer/tour-file.service.js';
import type { Role } from '../../../api/src/platform/sign-in/person.js';

export const password = 'bench';
export const benchDay = '2027-02-26';

/** A database of its own with the demo tour in it, and an API in this process that takes no jobs: others do. Durable: it waits for the disk, as a house does. */
export interface House {
  readonly app: NestExpressApplication;
  readonly databaseUrl: string;
  readonly dataSource: DataSource;
  close(): Promise<void>;
}

export async function openHouse(root: string, durable = false): Promise<House> {
  const folder = mkdtempSync(join(tmpdir(), 'cartwright-bench-'));
  const database = await startEmbeddedDatabase({ folder, durable, say: () => undefined });
  await migrate(database.url);
  const app = await createApp({ config: configOf(database.url) });
  await app.init();
  const dataSource = app.get(DataSource);
  await loadDemo(dataSource, app.get(TourFileService), root, benchDay, () => password);
  return {
    app,
    databaseUrl: database.url,
    dataSource,
    close: async () => {
      await app.close();
      await database.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A second tour on the demo's kit with so many cases and trucks enough for them. */
export async function addFreightTour({ app }: House, root: string, pieces: number): Promise<{ tourId: string; showId: string }> {
  const file = JSON.parse(readFileSync(join(root, 'tests', 'examples', 'demo-tour.json'), 'utf8')) as Written;
  const models = file.catalogue.cases.filter(
    (each) => each.purpose !== 'hoists' && each.purpose !== 'grids' && each.purpose !== 'hardware',
  );
  const depot = file.tour.depot;
  const cases = Array.from({ length: pieces }, (_, index) => ({
    id: `BF-${String(index + 1).padStart(4, '0')}`,
    kind: 'case',
    model: models[index % models.length]?.model,
    depot,
  }));
  const trucks = Array.from({ length: Math.ceil(pieces / 30) }, (_, index) => ({
    id: `BT-${index + 1}`,
    kind: 'truck',
    model: file.catalogue.trucks[0]?.model,
    depot,
  }));
  const own = file.tour.freight.filter(
    (each) => !models.some((model) => file.items.some((item) => item.id === each.case && item.model === model.model)),
  );
  const tour = {
    ...file.tour,
    id: 'big-freight',
    name: 'Big freight',
    freight: [...own, ...cases.map((each) => ({ case: each.id }))],
    trucks: trucks.map((each) => each.id),
    shows: file.tour.shows.slice(0, 1),
  };
  const read = { ...file, items: [...file.items, ...cases, ...trucks], tour };
  const { faults } = await app.get(TourFileService).import(read, { name: 'Bench' }, false);
  if (faults.length > 0) throw new Error(JSON.stringify(faults.slice(0, 3)));
  return { tourId: tour.id, showId: tour.shows.map((each) => each.id).join() };
}

interface Written {
  readonly catalogue: { readonly cases: readonly { model: string; purpose: string }[]; readonly trucks: readonly { model: string }[] };
  readonly items: readonly { id: string; model: string }[];
  readonly tour: { readonly depot: string; readonly freight: readonly { case: string }[]; readonly shows: readonly { id: string }[] };
}

/** The built program of an app in a process of its own, killed with `stop`. */
export function startProcess(root: string, program: 'api' | 'worker', environment: Record<string, string>): ChildProcess {
  return spawn(process.execPath, [join(root, 'dist', 'apps', program, 'src', 'main.js')], {
    env: { OWN_OPERATIONS: 'warehouse,system,safety', ...process.env, ...environment },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}

export async function stopProcess(child: ChildProcess, signal: 'SIGTERM' | 'SIGKILL'): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = once(child, 'exit');
  child.kill(signal);
  await ended;
}

export async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as { port: number };
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** Asks the API at an address as somebody who is signed in there. */
export async function signIn(address: string, role: Role): Promise<(query: string, variables?: object) => Promise<unknown>> {
  const email = demoPeople.find((each) => each.role === role)?.email;
  const cookie = await cookieOf(address, email ?? '', password);
  return async (query, variables = {}) => {
    const { data, errors } = (await (await post(address, cookie, query, variables)).json()) as { data?: unknown; errors?: object[] };
    if (errors) throw new Error(JSON.stringify(errors[0]));
    return data;
  };
}

const post = (address: string, cookie: string, query: string, variables: object): Promise<Response> =>
  fetch(`${address}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie },
    body: JSON.stringify({ query, variables }),
  });

/** Signs in with the operation of the screens, the only way in for strangers. */
export async function cookieOf(address: string, email: string, secret: string): Promise<string> {
  const reply = await fetch(`${address}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      variables: { email, password: secret },
      extensions: { persistedQuery: { version: 1, sha256Hash: hashOfOperation('SignIn') } },
    }),
  });
  return (reply.headers.get('set-cookie') ?? '').replace(/;.*$/, '');
}

/** Answers /healthz. */
export async function untilUp(address: string): Promise<void> {
  for (;;) {
    const isUp = await fetch(`${address}/healthz`).then(
      (response) => response.ok,
      () => false,
    );
    if (isUp) return;
    await pause(100);
  }
}

/** Answers /readyz; Trouble where it does not within so many seconds. */
export async function untilReady(address: string, seconds: number): Promise<void> {
  for (const end = performance.now() + seconds * 1000; performance.now() < end; await pause(50)) {
    const isReady = await fetch(`${address}/readyz`, { signal: AbortSignal.timeout(5000) }).then(
      (response) => response.ok,
      () => false,
    );
    if (isReady) return;
  }
  throw new Trouble(`Not ready within ${seconds} s.`);
}
