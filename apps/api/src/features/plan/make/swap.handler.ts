import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type Result, ok } from '#kernel';
import type { JobHandler, Saved } from '../../../planning/jobs/job-handler.js';
import type { JobRefusal } from '../../../planning/jobs/jobs.js';
import { type JobRow, authorOf } from '../../../planning/jobs/rows.js';
import { taskFile } from '../../../planning/solve/solver-pool.js';
import { PlanWriter } from '../stored/plan.writer.js';
import type { SwapAnswer } from './swap.task.js';

/** Saves the draft that does without a failed box. */
@Injectable()
export class SwapHandler implements JobHandler<SwapAnswer> {
  readonly kind = 'swap';
  readonly task = taskFile(import.meta.url, './swap.task.js');
  readonly effort = 'usual';

  constructor(private readonly writer: PlanWriter) {}

  async save(manager: EntityManager, job: JobRow, answer: SwapAnswer): Promise<Result<Saved, JobRefusal>> {
    const { made, difference, marked } = answer;
    const draftId = await this.writer.putDraft(manager, made, authorOf(job));
    return ok({ answer: { draftId, difference, marked }, stoppedBy: made.stoppedBy });
  }
}
