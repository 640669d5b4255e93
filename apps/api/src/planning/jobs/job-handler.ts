import type { EntityManager } from 'typeorm';
import type { Result } from '#kernel';
import type { JobRefusal } from './jobs.js';
import type { Effort } from '../solve/planning-task.js';
import type { JobKind, JobRow } from './rows.js';

/** What became of a job, and what ended the solver's work where it says so. */
export interface Saved {
  readonly answer: object;
  readonly stoppedBy: string | null;
}

/** One kind of job: the task that runs in a thread, and the short transaction that saves its answer. */
export interface JobHandler<Answer = never> {
  readonly kind: JobKind;
  /** The built file of the task. */
  readonly task: string;
  readonly effort: Effort;
  /** Inside the transaction in which the inputs were found unchanged; a refusal rolls back what it wrote. */
  save(manager: EntityManager, job: JobRow, answer: Answer): Promise<Result<Saved, JobRefusal>>;
}

export const JOB_HANDLERS = Symbol('job handlers');
