import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type Result, ok } from '#kernel';
import type { Improvement } from '#pack-plan';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import type { JobHandler, Saved } from '../../../planning/jobs/job-handler.js';
import type { JobRefusal } from '../../../planning/jobs/jobs.js';
import type { JobRow } from '../../../planning/jobs/rows.js';
import { taskFile } from '../../../planning/solve/solver-pool.js';
import type { ImproveSubject } from '../stored/plan.writer.js';
import { putImprovement } from './improvement.repository.js';

/** Keeps what longer work on a plan came to beside the plan, which stays as it is. */
@Injectable()
export class ImproveHandler implements JobHandler<Improvement> {
  readonly kind = 'improve';
  readonly task = taskFile(import.meta.url, './improve.task.js');
  readonly effort = 'background';

  constructor(@Inject(CLOCK) private readonly clock: Clock) {}

  async save(manager: EntityManager, job: JobRow, improvement: Improvement): Promise<Result<Saved, JobRefusal>> {
    const { planId } = job.subject as ImproveSubject;
    await putImprovement(manager, planId, improvement, this.clock.now());
    return ok({ answer: { planId, code: improvement.fact.code }, stoppedBy: stoppedByOf(improvement) });
  }
}

const stoppedByOf = ({ fact, better }: Improvement): string | null =>
  fact.code === 'proved' ? 'proof' : fact.code === 'not-shorter' ? 'work' : (better?.carts.stoppedBy ?? null);
