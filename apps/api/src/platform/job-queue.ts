import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import PgBoss from 'pg-boss';
import type { EntityManager } from 'typeorm';
import { CONFIG, type Config } from './config.js';
import { outsideRequest } from './request-once/current-request.js';

/** How often a job whose worker died is tried again, and after how long it counts as dead. */
const retries = { retryLimit: 2, expireInSeconds: 300 };

/** Long work waits in PostgreSQL: sent inside the transaction that asks for it, taken by any worker, tried again when one dies. */
@Injectable()
export class JobQueue implements OnApplicationShutdown {
  private started: Promise<PgBoss> | undefined;

  constructor(@Inject(CONFIG) private readonly config: Config) {}

  /** Makes the queue where it is new: before the transaction that sends, which would not see it otherwise. */
  async open(queue: string): Promise<void> {
    await (await this.boss()).createQueue(queue);
  }

  /** `data` is put in the open queue when the transaction of `manager` commits. */
  async send(manager: EntityManager, queue: string, data: object): Promise<void> {
    const boss = await this.boss();
    const db = { executeSql: async (text: string, values: unknown[]) => ({ rows: await manager.query<unknown[]>(text, values) }) };
    const id = await boss.send(queue, data, { ...retries, db });
    if (id === null) throw new Error(`the queue ${queue} took nothing: it was not open before the transaction`);
  }

  async work<T extends object>(queue: string, handle: (data: T) => Promise<void>): Promise<void> {
    const boss = await this.boss();
    await boss.createQueue(queue);
    await boss.work<T>(queue, { batchSize: 1, pollingIntervalSeconds: 1 }, async (jobs) => {
      for (const job of jobs) await handle(job.data);
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await (await this.started)?.stop({ graceful: true, wait: true, timeout: 5_000 });
  }

  private boss(): Promise<PgBoss> {
    this.started ??= outsideRequest(() => this.start());
    return this.started;
  }

  private async start(): Promise<PgBoss> {
    const boss = new PgBoss({ connectionString: this.config.databaseUrl, schema: 'job_queue', max: 3 });
    boss.on('error', (fault) => process.stderr.write(`Job queue: ${fault.message}\n`));
    return boss.start();
  }
}
