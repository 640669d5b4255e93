import { randomUUID } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import pg from 'pg';
import { DataSource } from 'typeorm';
import type { Words } from '#words';
import { createApp } from '../../apps/api/src/create-app.js';
import { dataSourceOptions } from '../../apps/api/src/data-source.js';
import { demoPeople, loadDemo } from '../../apps/api/src/features/transfer/demo.js';
import { TourFileService } from '../../apps/api/src/features/transfer/tour-file.service.js';
import { type Clock, type Config, configOf } from '../../apps/api/src/platform/config/config.js';
import { hashOfOperation } from '../../apps/api/src/platform/door/listed-operations.js';
import { JobRunner } from '../../apps/api/src/planning/jobs/job-runner.js';
import type { Solvers } from '../../apps/api/src/planning/solve/solver-pool.js';
import type { Role } from '../../apps/api/src/platform/sign-in/person.js';
import { loginBeside } from '../../apps/api/src/platform/database/application-role.js';
import { loadLanded } from './landed-database.js';
import { solversIn } from './worded-solvers.js';

/** The day on which every test of the API lives; the demo tour's prep starts three days later. */
export const testDay = '2027-02-26';
export const passwordOf = (role: Role): string => `test-${role}`;

export interface TestApp {
  readonly app: NestExpressApplication;
  readonly address: string;
  readonly dataSource: DataSource;
  readonly databaseUrl: string;
  as(role: Role): Promise<Agent>;
  close(): Promise<void>;
}

export interface TestAppOptions {
  readonly demo?: boolean;
  readonly web?: boolean;
  /** The day of a landed database (tests/database/landed) to start on; the demo is not loaded then. */
  readonly landed?: string;
  /** The address under which the API finds its database, made from the real one: something in between. */
  readonly through?: (databaseUrl: string) => Promise<string>;
  /** A second API on the database of this one, which stays its owner. */
  readonly beside?: TestApp;
  /** What is to be otherwise than the defaults of a server. */
  readonly config?: Partial<Config>;
  readonly logTo?: { write(line: string): void };
  /** The words in which everything is said, also what is planned; planning goes on in the process of the test then. */
  readonly words?: Words;
  /** False: jobs wait until somebody takes them. */
  readonly runsJobs?: boolean;
  /** Whose instants the house lives by; nine in the morning, UTC, of the day of all tests where nothing is said. */
  readonly clock?: Clock;
  /** Around the threads that plan. */
  readonly solversAround?: (pool: Solvers) => Solvers;
}

export interface GraphQlReply<T> {
  readonly data?: T | null;
  readonly errors?: { message: string; extensions: { code: string; faults?: { field: string; value: unknown; wanted: string }[] } }[];
}

/** Somebody signed in, talking to the API over its own port. */
export interface Agent {
  readonly cookie: string;
  graphql<T = any>(query: string, variables?: object, headers?: Record<string, string>): Promise<GraphQlReply<T>>;
  fetch(path: string, init?: RequestInit): Promise<Response>;
}

/** A whole API on a fresh copy of the migrated database, with the demo tour in it unless told otherwise. */
export async function startTestApp({
  landed,
  demo = landed === undefined,
  web = false,
  through,
  beside,
  config,
  logTo,
  words,
  runsJobs = true,
  clock = { now: () => new Date(`${testDay}T09:00:00Z`) },
  solversAround,
}: TestAppOptions = {}): Promise<TestApp> {
  const server = process.env.TEST_DATABASE_URL;
  if (!server) throw new Error('TEST_DATABASE_URL is not set: run the tests with npm test');
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  const template = landed === undefined ? 'cartwright_template' : 'template0';
  if (!beside) await onServer(server, `CREATE DATABASE ${name} TEMPLATE ${template} STRATEGY FILE_COPY`);
  const realUrl = beside?.databaseUrl ?? Object.assign(new URL(server), { pathname: `/${name}` }).href;
  if (landed !== undefined) await loadLanded(realUrl, landed);
  // As in a house, the API works as the application; what a test does to the database, it does as the owner.
  const applicationUrl = loginBeside(realUrl)?.url ?? realUrl;
  const databaseUrl = through ? await through(applicationUrl) : applicationUrl;
  const app = await createApp({
    config: configOf(databaseUrl, {
      webFolder: web ? join(process.cwd(), 'dist', 'web') : null,
      ...config,
    }),
    ...(logTo && { logTo }),
    ...(words && { words }),
    clock,
    ...(words && { solversAround: () => solversIn(words, databaseUrl) }),
    ...(solversAround && { solversAround }),
  });
  await app.listen(0, '127.0.0.1');
  if (runsJobs) app.get(JobRunner).start();
  const options = dataSourceOptions(realUrl);
  const extra: unknown = { ...options.extra, max: 4 };
  const dataSource = await new DataSource({ ...options, extra }).initialize();
  if (demo && !beside) await loadDemo(app.get(DataSource), app.get(TourFileService), process.cwd(), testDay, passwordOf);
  const address = `http://127.0.0.1:${(app.getHttpServer().address() as AddressInfo).port}`;
  return {
    app,
    address,
    dataSource,
    databaseUrl: realUrl,
    as: (role) => signIn(address, role),
    close: async () => {
      await app.close();
      await dataSource.destroy();
      if (!beside) await onServer(server, `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
    },
  };
}

async function onServer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}

async function signIn(address: string, role: Role): Promise<Agent> {
  const { email } = demoPeople.find((each) => each.role === role)!;
  const reply = await postListed(address, 'SignIn', { email, password: passwordOf(role) });
  const cookie = (reply.headers.get('set-cookie') ?? '').split(';')[0]!;
  return agentOf(address, cookie);
}

export function agentOf(address: string, cookie: string): Agent {
  return {
    cookie,
    graphql: async (query, variables, headers) => (await post(address, cookie, query, variables, headers)).json() as never,
    fetch: (path, init) => fetch(address + path, { ...init, headers: { cookie, ...init?.headers } }),
  };
}

export function post(
  address: string,
  cookie: string,
  query: string,
  variables?: object,
  headers: Record<string, string> = {},
): Promise<Response> {
  return fetch(`${address}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie, ...headers },
    body: JSON.stringify({ query, variables }),
  });
}

/** An operation of the screens by its name, as the screens send it: the only kind that strangers may send. */
export function postListed(address: string, name: string, variables: object, headers: Record<string, string> = {}): Promise<Response> {
  return fetch(`${address}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify({ variables, extensions: { persistedQuery: { version: 1, sha256Hash: hashOfOperation(name) } } }),
  });
}
