import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type Result, ok } from '#kernel';
import type { JobHandler, Saved } from '../../../planning/jobs/job-handler.js';
import type { JobRefusal } from '../../../planning/jobs/jobs.js';
import { type JobRow, authorOf } from '../../../planning/jobs/rows.js';
import { taskFile } from '../../../planning/solve/solver-pool.js';
import { PlanWriter } from '../stored/plan.writer.js';
import type { SearchAnswer } from './search.task.js';

/** Saves what a longer search found. */
@Injectable()
export class SearchHandler implements JobHandler<SearchAnswer> {
  readonly kind = 'search';
  readonly task = taskFile(import.meta.url, './search.task.js');
  readonly effort = 'longer';

  constructor(private readonly writer: PlanWriter) {}

  async save(manager: EntityManager, job: JobRow, { made, sentence }: SearchAnswer): Promise<Result<Saved, JobRefusal>> {
    const draftId = made && (await this.writer.putDraft(manager, made, authorOf(job)));
    return ok({ answer: { draftId, sentence }, stoppedBy: made?.stoppedBy ?? null });
  }
}
