import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { createServer } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { type EmbeddedDatabase, ServerKeeper, Trouble, lanCertificate, namesOfThisMachine, startEmbeddedDatabase } from '#runtime';
import { createApp } from '../api/src/create-app.js';
import { demoPeople, isEmpty, loadDemo, unchangedPasswords } from '../api/src/features/transfer/demo.js';
import { TourFileService } from '../api/src/features/transfer/tour-file.service.js';
import { readSettings, systemClock, today } from '../api/src/platform/config/config.js';
import { MakeService } from '../api/src/features/plan/make/make.service.js';
import { Jobs } from '../api/src/planning/jobs/jobs.js';
import type { Role } from '../api/src/platform/sign-in/person.js';
import { prepareDatabase } from '../api/src/prepare-database.js';
import { lanLines, serveTrustPage } from './trust-page.js';
import pg from 'pg';
import { DataSource } from 'typeorm';

/**
 * Everything on one port: database (embedded, or DATABASE_URL), API, screens, demo tour in an empty database. Runs until it is told to stop.
 * `--lan`: listens on every network of this machine over TLS, so that phones reach it and keep its screens. `--empty`: a house of one's own beside the demo's, without the demo.
 */
export async function main(args: readonly string[], root: string): Promise<number> {
  const say = (sentence: string) => void process.stdout.write(`${sentence}\n`);
  const stop = new StopSignal();
  let database: EmbeddedDatabase | undefined;
  let app: NestExpressApplication | undefined;
  let worker: ServerKeeper | undefined;
  let trustPage: Server | undefined;
  try {
    const settings = readSettings(process.env, 'start');
    const { port } = settings;
    const isOnLan = args.includes('--lan');
    const host = isOnLan ? '0.0.0.0' : settings.host;
    settings.warnings.forEach(say);
    for (const each of isOnLan ? [port, port + 1] : [port]) await portMustBeFree(each, host);
    const isOwn = args.includes('--empty');
    const dataFolder = `${settings.dataFolder ?? join(root, '.data')}${isOwn ? '-own' : ''}`;
    const setUpCode = isOwn ? readableSecret().toLowerCase() : null;
    if (settings.databaseUrl === null) database = await startEmbeddedDatabase({ folder: dataFolder, durable: true, say });
    const databaseUrl = settings.databaseUrl ?? database!.url;
    const { applicationUrl, ran, warnings } = await prepareDatabase({ databaseUrl, ownerUrl: settings.ownerUrl }, say);
    warnings.forEach(say);
    if (ran > 0) say(`Database ready (${ran} ${ran === 1 ? 'migration' : 'migrations'}).`);
    const lan = isOnLan ? await lanCertificate(join(dataFolder, 'lan'), namesOfThisMachine(), new Date()) : undefined;
    const webFolder = settings.webFolder ?? join(root, 'dist', 'web');
    const secureCookies = settings.secureCookies || isOnLan;
    app = await createApp({
      config: { ...settings, databaseUrl: applicationUrl, webFolder, setUpCode, secureCookies },
      ...(lan && { tls: lan }),
    });
    await app.init();
    const keeper = (worker = keepWorker(
      root,
      { DATABASE_URL: applicationUrl, CARTWRIGHT_OWNER_URL: settings.ownerUrl ?? databaseUrl },
      say,
    ));
    let beginning: Promise<void> | undefined;
    const beginWorker = () => (beginning ??= keeper.begin());
    const fill = () => demoIfEmpty(app as NestExpressApplication, root, dataFolder, beginWorker);
    const passwords = isOwn ? undefined : await onceAtATime(settings.ownerUrl ?? databaseUrl, fill);
    await app.listen(port, host);
    // After the house is up: a processor that both want is the house's first.
    await beginWorker();
    trustPage = lan && (await serveTrustPage(lan, port));
    for (const line of lan ? lanLines(lan, port) : addressLines(host, port)) say(line);
    await sayHowToSignIn(app.get(DataSource), { passwords, setUpCode, dataFolder }, say);
    say('Ctrl-C stops it, database included.');
    await stop.wait();
    say('Stopping ...');
    return 0;
  } catch (fault) {
    process.stderr.write(`${fault instanceof Trouble ? fault.message : ((fault as Error).stack ?? String(fault))}\n`);
    return 1;
  } finally {
    trustPage?.close();
    await Promise.all([app?.close(), worker?.stop('SIGTERM', 'SIGKILL', 10_000)]);
    await database?.stop();
    stop.done();
  }
}

/** The first signal asks to stop; more of them are heard while stopping goes on. */
class StopSignal {
  private asked: () => void = () => undefined;
  private readonly promise = new Promise<void>((resolve) => (this.asked = resolve));
  private readonly hear = (): void => this.asked();

  constructor() {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, this.hear);
  }

  wait(): Promise<void> {
    return this.promise;
  }

  done(): void {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.off(signal, this.hear);
  }
}

/** Looked at first, before anything is started for nothing. */
async function portMustBeFree(port: number, host: string): Promise<void> {
  const probe = createServer();
  const code = await new Promise<string | undefined>((resolve) => {
    probe.once('error', (fault: NodeJS.ErrnoException) => resolve(fault.code));
    probe.listen(port, host, () => resolve(undefined));
  });
  await new Promise<void>((resolve) => (code === undefined ? probe.close(() => resolve()) : resolve()));
  if (code === 'EADDRINUSE') throw new Trouble(`Port ${port} is in use by another program. Choose another: PORT=4311 npm start`);
  if (code === 'EACCES') throw new Trouble(`Port ${port} is not open to this user. Choose one above 1023: PORT=4310 npm start`);
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND') throw new Trouble(`HOST is "${host}": wanted an address of this machine.`);
  if (code !== undefined) throw new Trouble(`Port ${port} cannot be used (${code}).`);
}

/** Where people find it: what is printed is what is listened on. */
export function addressLines(host: string, port: number, interfaces = networkInterfaces()): string[] {
  const urlOf = (address: string) => `http://${address.includes(':') ? `[${address}]` : address}:${port}`;
  const isAll = host === '0.0.0.0' || host === '::';
  if (!isAll) {
    const isHere = host === 'localhost' || host === '::1' || /^127\./.test(host);
    return [
      `Cartwright is at ${urlOf(host === '127.0.0.1' ? 'localhost' : host)}${isHere ? ', for this machine only (npm start -- --lan: for others too)' : ''}`,
    ];
  }
  const addresses = Object.values(interfaces)
    .flatMap((each) => each ?? [])
    .filter((each) => !each.internal && (each.family === 'IPv4' || (host === '::' && !each.address.startsWith('fe80'))))
    .map((each) => urlOf(each.address));
  return [`Cartwright is at ${urlOf('localhost')}`, ...addresses.map((each) => `  and for whoever is on that network at ${each}`)];
}

interface FirstStart {
  /** Of the made-up people, where they were made now. */
  readonly passwords: Record<Role, string> | undefined;
  readonly setUpCode: string | null;
  readonly dataFolder: string;
}

async function sayHowToSignIn(
  dataSource: DataSource,
  { passwords, setUpCode, dataFolder }: FirstStart,
  say: (sentence: string) => void,
): Promise<void> {
  if (passwords) {
    say('Sign in as one of these made-up people. This is printed once; change them under People before anybody else gets in:');
    for (const { role, name, email } of demoPeople) say(`  ${name.padEnd(17)}${email.padEnd(32)}${passwords[role]}`);
    say('Begin with your own warehouse: npm start -- --empty. It is kept beside this one, which stays as it is.');
    return;
  }
  if (setUpCode !== null) {
    if (await isEmpty(dataSource))
      say(`Nothing is on file yet. Open the address and name its first people; the page asks for this code: ${setUpCode}`);
    return;
  }
  // The house is up: a database that goes away at this moment only leaves this unsaid.
  const left = await firstPasswordsLeft(dataSource, dataFolder).catch(() => 0);
  if (left > 0) say(`${left} of the made-up people still have the password of the first start; it is in ${signInFile(dataFolder)}.`);
}

/** Read off one screen and typed at another. */
const readableSecret = (): string =>
  randomBytes(6)
    .toString('base64url')
    .replaceAll(/[-_0O1lI]/g, 'k');

const signInFile = (dataFolder: string): string => join(dataFolder, 'sign-in.json');

/** Forgets the passwords that somebody has changed since; how many of the first start still hold. */
async function firstPasswordsLeft(dataSource: DataSource, dataFolder: string): Promise<number> {
  const file = signInFile(dataFolder);
  if (!existsSync(file)) return 0;
  const passwords = JSON.parse(readFileSync(file, 'utf8')) as Partial<Record<Role, string>>;
  const left = await unchangedPasswords(dataSource, passwords);
  if (Object.keys(left).length === 0) rmSync(file);
  else writeFileSync(file, JSON.stringify(left), { mode: 0o600 });
  return Object.keys(left).length;
}

/** Plans beside the house, in a process of its own: what it dies of takes nobody else along. */
function keepWorker(root: string, environment: Readonly<Record<string, string>>, say: (sentence: string) => void): ServerKeeper {
  const start = (): Promise<ChildProcess> =>
    Promise.resolve(
      spawn(process.execPath, [join(root, 'dist', 'apps', 'worker', 'src', 'main.js')], {
        env: { CARTWRIGHT_LOG_LEVEL: 'warn', CARTWRIGHT_LOG_FORMAT: 'lines', ...process.env, ...environment },
        // Ctrl-C in the terminal reaches it through us; it hears when we are gone.
        detached: true,
        stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
      }),
    );
  return new ServerKeeper('The worker', start, say);
}

/** Several starts on an empty database: one fills it, the others wait for that one. */
async function onceAtATime<T>(databaseUrl: string, work: () => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: databaseUrl, application_name: 'cartwright start' });
  client.on('error', () => undefined);
  await client.connect();
  try {
    await client.query('SELECT pg_advisory_lock($1)', ['4849551235']);
    return await work();
  } finally {
    await client.end().catch(() => undefined);
  }
}

/** Loads the demo into an empty database and plans its shows; gives the passwords where that was done now. */
async function demoIfEmpty(
  app: NestExpressApplication,
  root: string,
  dataFolder: string,
  beginWorker: () => Promise<void>,
): Promise<Record<Role, string> | undefined> {
  const dataSource = app.get(DataSource);
  if (!(await isEmpty(dataSource))) return undefined;
  await beginWorker();
  const passwords: Record<Role, string> = { warehouse: readableSecret(), system: readableSecret(), safety: readableSecret() };
  await loadDemo(dataSource, app.get(TourFileService), root, today(systemClock), (role) => passwords[role]);
  const plans = app.get(MakeService);
  for (const show of ['quayside', 'old-mill', 'fenland'])
    await app.get(Jobs).ended(await plans.make('harbour-lights', show, { name: 'Cartwright' }));
  mkdirSync(dataFolder, { recursive: true });
  writeFileSync(signInFile(dataFolder), JSON.stringify(passwords), { mode: 0o600 });
  return passwords;
}
