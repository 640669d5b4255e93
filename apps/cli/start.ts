import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import type { NestExpressApplication } from '@nestjs/platform-express';
import { type EmbeddedDatabase, Trouble, startEmbeddedDatabase } from '#runtime';
import { createApp } from '../api/src/create-app.js';
import { migrate } from '../api/src/data-source.js';
import { demoPeople, isEmpty, loadDemo } from '../api/src/features/transfer/demo.js';
import { TourFileService } from '../api/src/features/transfer/tour-file.service.js';
import { readSettings, systemClock, today } from '../api/src/platform/config/config.js';
import { MakeService } from '../api/src/features/plan/make/make.service.js';
import { JobRunner } from '../api/src/planning/jobs/job-runner.js';
import { Jobs } from '../api/src/planning/jobs/jobs.js';
import type { Role } from '../api/src/platform/sign-in/person.js';
import { DataSource } from 'typeorm';

/** Everything on one port: database (embedded, or DATABASE_URL), API, screens, demo tour in an empty database. Runs until it is told to stop. */
export async function main(_args: readonly string[], root: string): Promise<number> {
  const say = (sentence: string) => void process.stdout.write(`${sentence}\n`);
  const stop = new StopSignal();
  let database: EmbeddedDatabase | undefined;
  let app: NestExpressApplication | undefined;
  try {
    const settings = readSettings(process.env, 'start');
    const { port } = settings;
    settings.warnings.forEach(say);
    await portMustBeFree(port);
    const dataFolder = settings.dataFolder ?? join(root, '.data');
    if (settings.databaseUrl === null) database = await startEmbeddedDatabase({ folder: dataFolder, durable: true, say });
    const databaseUrl = settings.databaseUrl ?? database!.url;
    const ran = await migrate(databaseUrl).catch((fault: Error) => {
      throw new Trouble(`The database does not answer or does not take the migrations: ${fault.message}`);
    });
    if (ran > 0) say(`Database ready (${ran} ${ran === 1 ? 'migration' : 'migrations'}).`);
    app = await createApp({
      config: { ...settings, databaseUrl, webFolder: settings.webFolder ?? join(root, 'dist', 'web') },
    });
    await app.init();
    app.get(JobRunner).start();
    const passwords = await demoIfEmpty(app, root, dataFolder);
    await app.listen(port);
    say(`Cartwright is at http://localhost:${port}`);
    if (passwords) {
      say('Sign in as one of these made-up people:');
      for (const { role, name, email } of demoPeople) say(`  ${name.padEnd(17)}${email.padEnd(32)}${passwords[role]}`);
    }
    say('Ctrl-C stops it, database included.');
    await stop.wait();
    say('Stopping ...');
    return 0;
  } catch (fault) {
    process.stderr.write(`${fault instanceof Trouble ? fault.message : ((fault as Error).stack ?? String(fault))}\n`);
    return 1;
  } finally {
    await app?.close();
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
async function portMustBeFree(port: number): Promise<void> {
  const probe = createServer();
  const code = await new Promise<string | undefined>((resolve) => {
    probe.once('error', (fault: NodeJS.ErrnoException) => resolve(fault.code));
    probe.listen(port, () => resolve(undefined));
  });
  await new Promise<void>((resolve) => (code === undefined ? probe.close(() => resolve()) : resolve()));
  if (code === 'EADDRINUSE') throw new Trouble(`Port ${port} is in use by another program. Choose another: PORT=4311 npm start`);
  if (code === 'EACCES') throw new Trouble(`Port ${port} is not open to this user. Choose one above 1023: PORT=4310 npm start`);
  if (code !== undefined) throw new Trouble(`Port ${port} cannot be used (${code}).`);
}

/** Loads the demo into an empty database and plans its first show; gives the passwords whenever this install made them. */
async function demoIfEmpty(app: NestExpressApplication, root: string, dataFolder: string): Promise<Record<Role, string> | undefined> {
  const file = join(dataFolder, 'sign-in.json');
  const dataSource = app.get(DataSource);
  if (!(await isEmpty(dataSource))) return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Record<Role, string>) : undefined;
  const password = () =>
    randomBytes(6)
      .toString('base64url')
      .replaceAll(/[-_0O1lI]/g, 'k');
  const passwords: Record<Role, string> = { warehouse: password(), system: password(), safety: password() };
  await loadDemo(dataSource, app.get(TourFileService), root, today(systemClock), (role) => passwords[role]);
  const plans = app.get(MakeService);
  for (const show of ['quayside', 'old-mill', 'fenland'])
    await app.get(Jobs).ended(await plans.make('harbour-lights', show, { name: 'Cartwright' }));
  mkdirSync(dataFolder, { recursive: true });
  writeFileSync(file, JSON.stringify(passwords), { mode: 0o600 });
  return passwords;
}
