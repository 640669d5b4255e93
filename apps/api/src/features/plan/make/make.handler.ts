import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type Result, ok } from '#kernel';
import type { JobHandler, Saved } from '../../../planning/jobs/job-handler.js';
import type { JobRefusal } from '../../../planning/jobs/jobs.js';
import type { MadePlan } from '../../../planning/solve/made-plan.js';
import { type JobRow, authorOf } from '../../../planning/jobs/rows.js';
import { taskFile } from '../../../planning/solve/solver-pool.js';
import { PlanWriter } from '../stored/plan.writer.js';

/** Saves the draft of a show, in the place of an older draft. */
@Injectable()
export class MakeHandler implements JobHandler<MadePlan> {
  readonly kind = 'make';
  readonly task = taskFile(import.meta.url, './make.task.js');
  readonly effort = 'usual';

  constructor(private readonly writer: PlanWriter) {}

  async save(manager: EntityManager, job: JobRow, made: MadePlan): Promise<Result<Saved, JobRefusal>> {
    return ok({ answer: { planId: await this.writer.putDraft(manager, made, authorOf(job)) }, stoppedBy: made.stoppedBy });
  }
}
