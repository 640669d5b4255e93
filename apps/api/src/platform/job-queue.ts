import { Inject, Injectable, Logger, type OnApplicationShutdown } from '@nestjs/common';
import PgBoss from 'pg-boss';
import type { EntityManager } from 'typeorm';
import { CONFIG, type Config } from './config.js';
import { logOutside } from './logs/house-logger.js';
import { JobLog } from './logs/job-log.js';
import { outsideRequest } from './request-once/current-request.js';

const logger = new Logger('job queue');

/** How often a job whose worker died is tried again, and after how long it counts as dead. */
const retries = { retryLimit: 2, expireInSeconds: 300 };

/** Long work waits in PostgreSQL: sent inside the transaction that asks for it, taken by any worker, tried again when one dies. */
@Injectable()
export class JobQueue implements OnApplicationShutdown {
  private started: Promise<PgBoss> | undefined;
  private stopping = false;

  constructor(
    @Inject(CONFIG) private readonly config: Config,
    private readonly jobLog: JobLog,
  ) {}

  /** Up from now on; throws where the database does not let it. */
  async start(): Promise<void> {
    await this.boss();
  }

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
      for (const job of jobs) await this.jobLog.run(queue, job.id, () => handle(job.data));
    });
  }

  async onApplicationShutdown(): Promise<void> {
    this.stopping = true;
    await (await this.started)?.stop({ graceful: true, wait: true, timeout: 5_000 });
  }

  private boss(): Promise<PgBoss> {
    this.started ??= outsideRequest(() => logOutside(() => this.startBoss())).catch((fault: unknown) => {
      this.started = undefined;
      throw fault;
    });
    return this.started;
  }

  private async startBoss(): Promise<PgBoss> {
    const boss = new PgBoss({ connectionString: this.config.databaseUrl, schema: 'job_queue', max: 3 });
    // A database that is stopped together with us says so on its last connections.
    boss.on('error', (fault) => this.stopping || logger.error({ err: fault }));
    return boss.start();
  }
}
