import { randomUUID } from 'node:crypto';
import { Inject, Injectable, Logger, type OnApplicationShutdown } from '@nestjs/common';
import { Piscina } from 'piscina';
import { DataSource } from 'typeorm';
import { canonicalJson, ok } from '#kernel';
import { taskFile } from '../../../planning/solve/solver-pool.js';
import { CLOCK, CONFIG, type Clock, type Config } from '../../../platform/config/config.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { NotFoundError } from '../../../platform/faults/fault.js';
import { outsideRequest } from '../../../platform/request-once/current-request.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { importSteps } from '../import-watch.js';
import type { ImportAnswer } from './import-answer.js';
import type { ImportTask } from './import-task.js';
import type { CsvImportView } from './import.types.js';
import type { ImportEnd } from './rows.js';

/** How often it is written down how far an import is, and for how long its process is taken to be alive then. */
const tellEveryMs = 500;
const aliveSeconds = 15;

/** Files that one process keeps at once: the one that comes in, and those that wait for it. */
const mostAtOnce = 4;

const view = `SELECT csv_import.id, "of", dry_run AS "dryRun", coalesce(account.name, 'Cartwright') AS "askedBy", asked_at AS "askedAt",
  coalesce(ended.state, 'going') AS state, step,
  coalesce((answer->>'rows')::int, rows_total) AS "rowsTotal", coalesce((answer->>'rows')::int, rows_checked) AS "rowsChecked",
  CASE WHEN ended.state = 'done' AND NOT dry_run THEN (answer->>'rows')::int ELSE rows_written END AS "rowsWritten",
  CASE WHEN ended.state = 'done' AND NOT dry_run THEN (answer->>'rows')::int ELSE rows_dated END AS "rowsDated",
  extract(epoch FROM coalesce(ended_at, clock_timestamp()) - asked_at)::int AS seconds, code, answer AS outcome
FROM csv_import LEFT JOIN csv_import_end ended ON import_id = csv_import.id LEFT JOIN account ON account.id = asked_by_id`;

export interface NewImport {
  /** "items/box", "models/boxes", "examinations". */
  readonly of: string;
  readonly bytes: Buffer;
  readonly dryRun: boolean;
  readonly reason: string;
}

/**
 * Files that come in beside the requests: taken at once, read, checked and written by a thread in one transaction. Its progress is a row that everybody may
 * look at; its end is another, written once: with the rows where they are saved, so that what is said of it is so. The file itself is kept by the process that
 * took it and by nobody else: when that dies, nothing was saved, and it is sent again.
 */
@Injectable()
export class Imports implements OnApplicationShutdown {
  private readonly logger = new Logger('imports');
  private readonly thread = new Piscina({ minThreads: 0, maxThreads: 1, idleTimeout: 60_000, atomics: 'disabled', recordTiming: false });
  private readonly going = new Map<string, { readonly abort: AbortController; readonly finished: Promise<void> }>();

  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    @Inject(CONFIG) private readonly config: Config,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async onApplicationShutdown(): Promise<void> {
    const going = [...this.going.entries()];
    for (const [id, { abort }] of going) {
      await this.end(id, 'failed', 'house-stopped').catch(() => undefined);
      abort.abort();
    }
    await Promise.all(going.map(([, each]) => each.finished));
    await this.thread.destroy();
  }

  /** The id under which it is followed; undefined where too many are under way here. Sent again under one request id, it comes in once. */
  async start(given: NewImport, who: SignedIn): Promise<string | undefined> {
    if (this.going.size >= mostAtOnce) return undefined;
    const id = randomUUID();
    const outcome = await this.unitOfWork.run<string>(async (manager) => {
      await manager.query(
        `INSERT INTO csv_import (id, "of", dry_run, asked_by_id, asked_at, step, rows_total, rows_checked, rows_written, rows_dated, alive_until)
         VALUES ($1, $2, $3, $4, clock_timestamp(), 'waiting', 0, 0, 0, 0, clock_timestamp() + $5 * interval '1 second')`,
        [id, given.of, given.dryRun, who.id, aliveSeconds],
      );
      return ok(id);
    });
    if (!outcome.ok) throw new Error('nobody refuses this');
    if (outcome.value === id) this.run(id, given, who);
    return outcome.value;
  }

  async find(id: string): Promise<CsvImportView> {
    await this.endDead();
    const [row] = await this.dataSource.query<CsvImportView[]>(`${view} WHERE csv_import.id = $1`, [id]);
    if (!row) throw new NotFoundError(`The import ${id.slice(0, 40)}`);
    return row;
  }

  /** The newest first. */
  async latest(): Promise<CsvImportView[]> {
    await this.endDead();
    return this.dataSource.query<CsvImportView[]>(`${view} ORDER BY number DESC LIMIT 10`);
  }

  /** One that is not over ends here; one that is over stays as it is. */
  async cancel(id: string): Promise<CsvImportView> {
    await this.find(id);
    await this.end(id, 'cancelled', null);
    this.going.get(id)?.abort.abort();
    return this.find(id);
  }

  private run(id: string, given: NewImport, who: SignedIn): void {
    const abort = new AbortController();
    const figures = new SharedArrayBuffer(20);
    const timer = setInterval(() => void this.tell(id, figures, abort), tellEveryMs);
    const finished = outsideRequest(() => this.carryOut(id, given, who, figures, abort.signal))
      .catch((fault: unknown) => this.failed(id, abort.signal, fault))
      .finally(async () => {
        clearInterval(timer);
        await this.write(id, figures).catch(() => undefined);
        this.going.delete(id);
      });
    this.going.set(id, { abort, finished });
  }

  private async carryOut(id: string, given: NewImport, who: SignedIn, figures: SharedArrayBuffer, signal: AbortSignal): Promise<void> {
    const { databaseUrl } = this.config;
    const task: ImportTask = { ...given, id, databaseUrl, who, at: this.clock.now().getTime(), figures };
    const answer = (await this.thread.run(task, {
      filename: taskFile(import.meta.url, '../../../import-csv.task.js'),
      signal,
    })) as ImportAnswer;
    await this.end(id, answer.faulty > 0 ? 'refused' : 'done', null, answer);
  }

  /** Whoever is first says how it ended. Where the thread saved and its answer was lost, that stands already. */
  private async end(id: string, state: ImportEnd, code: string | null, answer: ImportAnswer | null = null): Promise<void> {
    await this.dataSource.query(
      `INSERT INTO csv_import_end (import_id, state, code, answer) VALUES ($1, $2, $3, $4) ON CONFLICT (import_id) DO NOTHING`,
      [id, state, code, answer && canonicalJson(answer)],
    );
  }

  private async failed(id: string, signal: AbortSignal, fault: unknown): Promise<void> {
    if (!signal.aborted) this.logger.error({ import: id, err: fault as Error });
    await this.end(id, 'failed', 'fault').catch((lost: unknown) => this.logger.warn({ import: id, err: lost as Error }));
  }

  /** Says how far it is and that this process lives; lets go of one that somebody else has ended. */
  private async tell(id: string, figures: SharedArrayBuffer, abort: AbortController): Promise<void> {
    // A database that is away for a moment is no end: the next word comes in half a second.
    if (await this.write(id, figures).catch(() => false)) abort.abort();
  }

  /** Gives whether it is over. */
  private async write(id: string, figures: SharedArrayBuffer): Promise<boolean> {
    const [step = 0, ...rows] = new Int32Array(figures);
    const [[row]] = await this.dataSource.query<[{ isOver: boolean }[], number]>(
      `UPDATE csv_import SET alive_until = clock_timestamp() + $7 * interval '1 second', step = $2, rows_total = $3, rows_checked = $4, rows_written = $5, rows_dated = $6
       WHERE id = $1 RETURNING EXISTS (SELECT FROM csv_import_end WHERE import_id = $1) AS "isOver"`,
      [id, importSteps[step], ...rows, aliveSeconds],
    );
    return row?.isOver ?? true;
  }

  /** What its process left behind when it died. The line of the end keeps what comes late from being saved. */
  private async endDead(): Promise<void> {
    await this.dataSource.query(
      `INSERT INTO csv_import_end (import_id, state, code) SELECT id, 'failed', 'house-stopped' FROM csv_import
       WHERE alive_until < clock_timestamp() AND NOT EXISTS (SELECT FROM csv_import_end WHERE import_id = id) ON CONFLICT (import_id) DO NOTHING`,
    );
  }
}
