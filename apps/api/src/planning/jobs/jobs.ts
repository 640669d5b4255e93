import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { DataSource, type EntityManager, In } from 'typeorm';
import { type BadInput, type Result, canonicalJson, ok, refuse } from '#kernel';
import { databaseErrorOf } from '../../platform/faults/database-error.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { ChangeFeed } from '../../platform/live/change-feed.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import { type Author, authorId } from '../../platform/sign-in/person.js';
import { type JobKind, JobRow, isOver } from './rows.js';

export interface NewJob {
  readonly kind: JobKind;
  readonly tourId: string;
  /** Empty where it is the whole tour. */
  readonly showId: string;
  readonly subject: object;
  readonly urgent: boolean;
  readonly askedBy: Author;
}

/** Why there is no answer: a code with its numbers, and the words of today. */
export interface JobRefusal {
  readonly code: string;
  readonly sentence: string;
  readonly reasons?: readonly string[];
  readonly faults?: readonly BadInput[];
}

/** Under what the change of a job is told. */
export const jobTopic = (id: string): string => `job/${id}`;

/** What the column `answer` holds. */
export type JobAnswer = Result<object, JobRefusal>;

/** How long an answer may be waited for in one request, ms. */
export const longestWaitMs = 60_000;

/** Where no change was heard of, the table is looked at this often, ms. */
const lookEveryMs = 2_000;

/** Asks for planning, tells of it, stops it. The row is the job: it waits in the table, and its worker takes it from there. */
@Injectable()
export class Jobs {
  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    private readonly feed: ChangeFeed,
  ) {}

  /** The id of the job that `decide` says in one transaction: a new one, or one that is going. Asked again under one request id, it is the same. */
  async ask(decide: (manager: EntityManager) => Promise<NewJob | JobRow>): Promise<string> {
    for (;;) {
      try {
        const outcome = await this.unitOfWork.run<string>(async (manager) => {
          const job = await decide(manager);
          return ok('id' in job ? job.id : await this.put(manager, job));
        });
        if (outcome.ok) return outcome.value;
      } catch (fault) {
        // Somebody else asked at the same moment: theirs is found now.
        if (databaseErrorOf(fault)?.constraint !== 'job_one_search_at_a_time') throw fault;
      }
    }
  }

  /** Puts a job on file inside the caller's transaction. */
  async put(manager: EntityManager, job: NewJob): Promise<string> {
    const id = randomUUID();
    await manager.query(
      `INSERT INTO job (id, kind, tour_id, show_id, subject, urgent, asked_by, asked_by_id, state, progress, attempt, asked_at)
       VALUES ($1, $2, $3, $4, $5, $6, $7, $8, 'waiting', 0, 0, clock_timestamp())`,
      [id, job.kind, job.tourId, job.showId, canonicalJson(job.subject), job.urgent, job.askedBy.name, authorId(job.askedBy)],
    );
    return id;
  }

  async find(id: string): Promise<JobRow> {
    const row = await this.dataSource.getRepository(JobRow).findOneBy({ id });
    if (!row) throw new NotFoundError(`The job ${id.slice(0, 40)}`);
    return row;
  }

  /** One of a kind for a show that is not over yet. */
  async going(manager: EntityManager, kind: JobKind, tourId: string, showId: string): Promise<JobRow | null> {
    return manager.getRepository(JobRow).findOneBy({ kind, tourId, showId, state: In(['waiting', 'running']) });
  }

  /** Ends those of a kind for a show that are not over yet, inside the caller's transaction: something newer took their place. */
  async overtake(manager: EntityManager, kind: JobKind, tourId: string, showId: string): Promise<void> {
    const answer: JobAnswer = refuse({ code: 'overtaken', sentence: 'A newer plan took its place.' });
    await manager.query(
      `UPDATE job SET state = 'cancelled', error_code = 'overtaken', answer = $4, lease_until = NULL, ended_at = clock_timestamp()
       WHERE kind = $1 AND tour_id = $2 AND show_id = $3 AND state IN ('waiting', 'running')`,
      [kind, tourId, showId, canonicalJson(answer)],
    );
  }

  /** The newest of a kind for a show. */
  async latest(kind: JobKind, tourId: string, showId: string): Promise<JobRow | null> {
    return this.dataSource.getRepository(JobRow).findOne({ where: { kind, tourId, showId }, order: { number: 'DESC' } });
  }

  /** The job when it is over, or as it is after `waitMs`. */
  async wait(id: string, waitMs: number): Promise<JobRow> {
    if (!Number.isInteger(waitMs) || waitMs < 0 || waitMs > longestWaitMs)
      throw new BadInputError([{ field: 'waitMs', value: waitMs, wanted: `0 to ${longestWaitMs} ms` }]);
    const until = performance.now() + waitMs;
    let wake = (): void => undefined;
    const stopListening = await this.feed.subscribe(({ topics }) => {
      if (topics.includes(jobTopic(id))) wake();
    });
    try {
      for (;;) {
        const told = new Promise<void>((resolve) => (wake = resolve));
        const row = await this.find(id);
        const left = until - performance.now();
        if (isOver(row) || left <= 0) return row;
        const timer = setTimeout(wake, Math.min(left, lookEveryMs));
        await told;
        clearTimeout(timer);
      }
    } finally {
      stopListening();
    }
  }

  /** The job when it is over, however long that takes. */
  async ended(id: string): Promise<JobRow> {
    for (;;) {
      const row = await this.wait(id, longestWaitMs);
      if (isOver(row)) return row;
    }
  }

  /** A job that is not over yet ends here; its worker lets go when it hears of it. One that is over stays as it is. */
  async cancel(id: string, who: string): Promise<JobRow> {
    const answer: JobAnswer = refuse({ code: 'cancelled', sentence: `Stopped by ${who}; nothing was changed.` });
    await this.unitOfWork.run(async (manager) => {
      await manager.query(
        `UPDATE job SET state = 'cancelled', error_code = 'cancelled', answer = $2, lease_until = NULL, ended_at = clock_timestamp()
         WHERE id = $1 AND state IN ('waiting', 'running')`,
        [id, canonicalJson(answer)],
      );
      return ok(undefined);
    }, 'READ COMMITTED');
    return this.find(id);
  }
}
