import { Inject, Injectable, Logger, type OnApplicationShutdown } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { type Result, canonicalJson, ok, refuse } from '#kernel';
import { isConnectionLost } from '../../platform/faults/database-error.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { ChangeFeed } from '../../platform/live/change-feed.js';
import { JobLog, maskedBy } from '../../platform/logs/job-log.js';
import { Metrics } from '../../platform/metrics/metrics.js';
import { insideAct } from '../../platform/acts/current-act.js';
import { outsideRequest } from '../../platform/request-once/current-request.js';
import { versionsOf } from '../snapshot/input-versions.js';
import { JOB_HANDLERS, type JobHandler, type Saved } from './job-handler.js';
import { type JobAnswer, type JobRefusal, jobTopic } from './jobs.js';
import type { Solved } from '../solve/planning-task.js';
import { JobRow, rankOf, rankSql } from './rows.js';
import { SOLVERS, type Solvers, slots } from '../solve/solver-pool.js';

/** A worker says this often that it lives, and is taken for dead after so long without a word. */
const renewEveryMs = 1_000;
const leaseSeconds = 6;

/** Where no change was heard of, the table is looked at this often. */
const lookEveryMs = 3_000;

/** Solves of one job on inputs that change meanwhile, and looks whether they did. */
const mostSolves = 3;
const mostLooks = 12;

/** A job whose workers died this often is not tried again: it may be what kills them. */
const mostAttempts = 8;

type Ending = 'lost' | 'yield' | 'stopping';
type Round = 'saved' | 'changed' | 'lost';
type Answered = Extract<Solved<never>, { kind: 'answer' }>;

interface Running {
  readonly job: JobRow;
  readonly abort: AbortController;
  readonly progress: SharedArrayBuffer;
  /** On a clock that does not go back, ms. */
  readonly from: number;
  ending: Ending | undefined;
  finished: Promise<void>;
}

/**
 * Takes jobs from the table while it lives, as many at once as there are solver threads, in the order of `rankOf`. It holds a lease on each and renews it; a
 * job whose lease ran out is taken by whoever looks next. Only the latest attempt may save: however often a job is taken, it has one effect.
 */
@Injectable()
export class JobRunner implements OnApplicationShutdown {
  private readonly logger = new Logger('jobs');
  private readonly running = new Map<string, Running>();
  private readonly handlers: ReadonlyMap<string, JobHandler<never>>;
  private timer: NodeJS.Timeout | undefined;
  private stopListening = (): void => undefined;
  private looking: Promise<void> | undefined;
  private lookAgain = false;

  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    private readonly feed: ChangeFeed,
    private readonly jobLog: JobLog,
    private readonly metrics: Metrics,
    @Inject(SOLVERS) private readonly solvers: Solvers,
    @Inject(JOB_HANDLERS) handlers: readonly JobHandler<never>[],
  ) {
    this.handlers = new Map(handlers.map((each) => [each.kind, each]));
  }

  start(): void {
    if (this.timer) return;
    this.timer = setInterval(() => this.look(), lookEveryMs);
    this.feed
      .subscribe(({ topics }) => this.heard(topics))
      .then(
        (stop) => (this.stopListening = stop),
        // Without it the table is looked at now and then.
        (fault: unknown) => this.logger.warn({ err: fault }),
      );
    this.look();
  }

  /** What runs is given back at once, so that another process takes it without waiting for the lease. */
  async onApplicationShutdown(): Promise<void> {
    clearInterval(this.timer);
    this.stopListening();
    await this.looking;
    const going = [...this.running.values()];
    for (const each of going) end(each, 'stopping');
    await Promise.all(going.map((each) => each.finished));
  }

  private heard(topics: readonly string[]): void {
    const about = topics.filter((each) => each.startsWith(jobTopic('')));
    for (const running of this.running.values()) if (about.includes(jobTopic(running.job.id))) void this.renew(running);
    if (about.length > 0) this.look();
  }

  /** One look at a time; what is heard meanwhile has it look again. */
  private look(): void {
    this.lookAgain = true;
    this.looking ??= (async () => {
      try {
        while (this.lookAgain) {
          this.lookAgain = false;
          await this.takeWhatWaits();
        }
      } catch (fault) {
        // A database that is away is looked at again by the clock.
        if (isConnectionLost(fault)) this.logger.warn('Jobs are not looked for: the database does not answer.');
        else this.logger.error({ err: fault as Error });
      } finally {
        this.looking = undefined;
      }
    })();
  }

  private async takeWhatWaits(): Promise<void> {
    await this.giveUpOnKillers();
    while (this.running.size < slots) {
      const job = await this.take();
      if (!job) return;
      this.run(job);
    }
    const [patient] = [...this.running.values()].sort((a, b) => rankOf(b.job) - rankOf(a.job));
    if (patient && (await this.waitsBefore(patient.job))) end(patient, 'yield');
  }

  private async take(): Promise<JobRow | undefined> {
    const [rows] = await this.dataSource.query<[{ id: string }[], number]>(
      `UPDATE job SET state = 'running', attempt = attempt + 1, progress = 0, started_at = coalesce(started_at, clock_timestamp()),
         lease_until = clock_timestamp() + $1 * interval '1 second'
       WHERE id = (SELECT id FROM job WHERE state = 'waiting' OR (state = 'running' AND lease_until < clock_timestamp())
                   ORDER BY ${rankSql}, number FOR UPDATE SKIP LOCKED LIMIT 1)
       RETURNING id`,
      [leaseSeconds],
    );
    return rows[0] ? this.dataSource.getRepository(JobRow).findOneByOrFail({ id: rows[0].id }) : undefined;
  }

  private async giveUpOnKillers(): Promise<void> {
    const refusal: JobRefusal = {
      code: 'workers-died',
      sentence: `${mostAttempts} workers died while they planned this; it is not tried again.`,
    };
    await this.dataSource.query(
      `UPDATE job SET state = 'failed', error_code = $1, answer = $2, lease_until = NULL, ended_at = clock_timestamp()
       WHERE state = 'running' AND lease_until < clock_timestamp() AND attempt >= $3`,
      [refusal.code, canonicalJson(refuse(refusal)), mostAttempts],
    );
  }

  private async waitsBefore(job: JobRow): Promise<boolean> {
    const rows = await this.dataSource.query<unknown[]>(`SELECT 1 FROM job WHERE state = 'waiting' AND ${rankSql} < $1 LIMIT 1`, [
      rankOf(job),
    ]);
    return rows.length > 0;
  }

  private run(job: JobRow): void {
    const running: Running = {
      job,
      abort: new AbortController(),
      progress: new SharedArrayBuffer(4),
      from: performance.now(),
      ending: undefined,
      finished: Promise.resolve(),
    };
    this.running.set(job.id, running);
    const renewal = setInterval(() => void this.renew(running), renewEveryMs);
    running.finished = outsideRequest(() =>
      insideAct({ who: { name: job.askedBy, id: job.askedById }, via: `job ${job.kind}` }, () =>
        this.jobLog.run(job.kind, job.id, () => this.attempt(running)),
      ),
    )
      .catch((fault: unknown) => this.faulted(running, fault))
      .catch((fault: Error) => this.logger.error({ job: job.id, err: fault }))
      .finally(() => {
        clearInterval(renewal);
        this.running.delete(job.id);
        if (running.ending !== 'stopping') this.look();
      });
  }

  /** Says that the worker lives and how far it is; lets go of a job that is no longer its own. */
  private async renew(running: Running): Promise<void> {
    const { job, progress } = running;
    const done = Atomics.load(new Int32Array(progress), 0) / 1000;
    const [, count] = await this.dataSource
      .query<[unknown[], number]>(
        `UPDATE job SET lease_until = clock_timestamp() + $1 * interval '1 second', progress = $2 WHERE id = $3 AND attempt = $4 AND state = 'running'`,
        [leaseSeconds, done, job.id, job.attempt],
      )
      // A database that does not answer for a while is no reason to stop: the next word comes in a second.
      .catch(() => [[], 1] as [unknown[], number]);
    if (count === 0) end(running, 'lost');
  }

  /** Ends without a fault where the job was cancelled or taken by another, or is given back. */
  private async attempt(running: Running): Promise<void> {
    try {
      await this.carryOut(running);
    } catch (fault) {
      if (running.ending === undefined) throw fault;
      if (running.ending !== 'lost') await this.giveBack(running.job);
    }
  }

  /** Solve, save; where the inputs changed meanwhile, solve again from the new ones, a few times. */
  private async carryOut(running: Running): Promise<void> {
    const handler = this.handlers.get(running.job.kind);
    if (!handler) throw new Error(`nobody handles jobs of the kind ${running.job.kind}`);
    let solved = await this.solve(running, handler, null);
    for (let solves = 1, looks = 0; ; looks++) {
      if (solved.kind === 'bad input' || solved.kind === 'not found') return this.refuse(running, refusalOf(solved));
      if (solved.kind === 'same') throw new Error('nothing was known that could be the same');
      if ((await this.save(running, handler, solved)) !== 'changed') return;
      if (looks >= mostLooks || solves >= mostSolves) return this.refuse(running, keptChanging(solves));
      const again: Solved<never> = await this.solve(running, handler, solved.fingerprint);
      if (again.kind === 'same') solved = { ...solved, versions: again.versions };
      else {
        solved = again;
        solves++;
      }
    }
  }

  private solve({ job, abort, progress }: Running, handler: JobHandler<never>, known: string | null): Promise<Solved<never>> {
    return this.solvers.solve<never>({
      file: handler.task,
      subject: job.subject,
      known,
      effort: handler.effort,
      progress,
      signal: abort.signal,
    });
  }

  /** The short transaction: still ours, inputs still those of the answer, saved, over. */
  private async save({ job, from }: Running, handler: JobHandler<never>, solved: Answered): Promise<Round> {
    const scope = { tourId: job.tourId, showId: job.showId };
    let stoppedBy: string | null = null;
    const outcome = await this.unitOfWork.run<Round, JobRefusal>(async (manager): Promise<Result<Round, JobRefusal>> => {
      if (!(await holds(manager, job))) return ok('lost');
      if ((await versionsOf(manager, scope)) !== solved.versions) return ok('changed');
      const saved = await handler.save(manager, job, solved.answer);
      if (!saved.ok) return saved;
      ({ stoppedBy } = saved.value);
      await this.over(manager, job, 'done', ok(saved.value.answer), saved.value);
      return ok('saved');
    });
    if (!outcome.ok) await this.refuseJob(job, outcome.error);
    else if (outcome.value === 'saved')
      this.metrics.planSeconds.observe({ kind: job.kind, stopped_by: stoppedBy ?? 'not said' }, (performance.now() - from) / 1000);
    return outcome.ok ? outcome.value : 'saved';
  }

  private refuse({ job }: Running, refusal: JobRefusal): Promise<void> {
    return this.refuseJob(job, refusal);
  }

  private async refuseJob(job: JobRow, refusal: JobRefusal, state: 'refused' | 'failed' = 'refused'): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      if (await holds(manager, job)) await this.over(manager, job, state, refuse(refusal));
      return ok(undefined);
    }, 'READ COMMITTED');
  }

  private async over(manager: EntityManager, job: JobRow, state: string, answer: JobAnswer, saved?: Saved): Promise<void> {
    await manager.query(
      `UPDATE job SET state = $1, answer = $2, error_code = $3, stopped_by = $4, progress = CASE WHEN $1 = 'done' THEN 1 ELSE progress END,
         lease_until = NULL, ended_at = clock_timestamp() WHERE id = $5`,
      [state, canonicalJson(answer), answer.ok ? null : answer.error.code, saved?.stoppedBy ?? null, job.id],
    );
  }

  /** Logged under its incident by then; it ends the job and is told by that alone. */
  private async faulted({ job }: Running, fault: unknown): Promise<void> {
    const sentence = maskedBy(fault) ?? 'Something went wrong while planning, not with what you typed. Nothing was saved.';
    await this.refuseJob(job, { code: 'fault', sentence }, 'failed');
  }

  private async giveBack(job: JobRow): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      await manager.query(
        `UPDATE job SET state = 'waiting', attempt = attempt - 1, progress = 0, lease_until = NULL WHERE id = $1 AND attempt = $2 AND state = 'running'`,
        [job.id, job.attempt],
      );
      return ok(undefined);
    }, 'READ COMMITTED');
  }
}

function end(running: Running, why: Ending): void {
  running.ending ??= why;
  running.abort.abort();
}

/** Locks the job's row where this attempt is still the one that counts. */
async function holds(manager: EntityManager, { id, attempt }: JobRow): Promise<boolean> {
  const rows = await manager.query<unknown[]>(`SELECT 1 FROM job WHERE id = $1 AND attempt = $2 AND state = 'running' FOR UPDATE`, [
    id,
    attempt,
  ]);
  return rows.length > 0;
}

const keptChanging = (solves: number): JobRefusal => ({
  code: 'inputs-kept-changing',
  sentence: `The inputs changed ${solves} times while this was planned. Nothing was saved; plan again when it is quieter.`,
});

function refusalOf(solved: Extract<Solved<never>, { kind: 'bad input' | 'not found' }>): JobRefusal {
  if (solved.kind === 'not found') return { code: 'not-found', sentence: solved.sentence };
  const sentence = solved.faults.map(({ field, wanted }) => `${field}: wanted ${wanted}`).join('; ');
  return { code: 'bad-input', sentence, faults: solved.faults };
}
