import { Inject, Injectable } from '@nestjs/common';
import pg from 'pg';
import { DataSource } from 'typeorm';
import { CONFIG, type Config } from './config/config.js';

/** Each part "up", or in words what is the matter. */
export interface Readiness {
  readonly database: string;
  readonly migrations: string;
  readonly queue: string;
}

export const isReady = (found: Readiness): boolean => Object.values(found).every((each) => each === 'up');

/** How long a database may take to answer before it counts as away, in milliseconds. */
const patience = 1000;

/** Whether work can be taken: asks the database on a connection of its own, so that a full pool or a dead one does not hide it. */
@Injectable()
export class ReadinessCheck {
  private going: Promise<Readiness> | undefined;

  constructor(
    private readonly dataSource: DataSource,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  /** Those who ask at the same time get the same answer. */
  look(): Promise<Readiness> {
    this.going ??= this.lookNow().finally(() => (this.going = undefined));
    return this.going;
  }

  private async lookNow(): Promise<Readiness> {
    const client = new pg.Client({ connectionString: this.config.databaseUrl, connectionTimeoutMillis: patience, query_timeout: patience });
    client.on('error', () => undefined);
    try {
      await client.connect();
      const { rows } = await client.query<{ name: string }>('SELECT name FROM migrations');
      return { database: 'up', migrations: this.compare(rows.map((each) => each.name)), queue: await queueState(client) };
    } catch (fault) {
      return { database: `does not answer (${codeOf(fault)})`, migrations: 'not known', queue: 'not known' };
    } finally {
      // Of a connection that is stuck nobody waits for the end.
      void client.end().catch(() => undefined);
    }
  }

  private compare(onFile: readonly string[]): string {
    const wanted = this.dataSource.migrations.map((each) => each.name ?? each.constructor.name);
    const missing = wanted.filter((name) => !onFile.includes(name));
    const unknown = onFile.filter((name) => !wanted.includes(name));
    if (missing.length > 0) return `${missing.length} still to run, first ${missing[0]}`;
    return unknown.length > 0 ? `the database is ahead of this program: ${unknown[0]}` : 'up';
  }
}

/** The queue is a table: where it can be read, work can be put there and taken. */
async function queueState(client: pg.Client): Promise<string> {
  try {
    await client.query(`SELECT 1 FROM job WHERE state IN ('waiting', 'running') LIMIT 1`);
    return 'up';
  } catch (fault) {
    return `cannot be read (${codeOf(fault)})`;
  }
}

const codeOf = (fault: unknown): string => (fault as { code?: string }).code ?? (fault as Error).message;
