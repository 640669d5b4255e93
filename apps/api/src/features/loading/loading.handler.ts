import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type Result, ok, refuse } from '#kernel';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { recordEvents } from '../../platform/event-log.js';
import type { JobHandler, Saved } from '../../planning/jobs/job-handler.js';
import type { JobRefusal } from '../../planning/jobs/jobs.js';
import { type JobRow, authorOf } from '../../planning/jobs/rows.js';
import { taskFile } from '../../planning/solve/solver-pool.js';
import { PlanWriter } from '../plan/stored/plan.writer.js';
import type { LoadingSubject, LoadingTaskAnswer } from './loading.task.js';
import { authorId } from '../../platform/sign-in/person.js';
import { LoadingActRow } from './rows.js';

/** Saves a wish with the draft that was planned around it. */
@Injectable()
export class LoadingHandler implements JobHandler<LoadingTaskAnswer> {
  readonly kind = 'loading';
  readonly task = taskFile(import.meta.url, './loading.task.js');
  readonly effort = 'usual';

  constructor(
    private readonly writer: PlanWriter,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async save(manager: EntityManager, job: JobRow, answer: LoadingTaskAnswer): Promise<Result<Saved, JobRefusal>> {
    if (answer.refusal) return refuse(answer.refusal);
    const { tourId, showId } = job;
    const who = authorOf(job);
    const { acts, sentence, made, changes } = answer;
    const at = this.clock.now();
    const { planId } = job.subject as LoadingSubject;
    for (const act of acts)
      await manager.getRepository(LoadingActRow).insert({ tourId, showId, at, who: who.name, personId: authorId(who), act: act as object });
    const draftId = await this.writer.putDraft(manager, made, who, planId);
    await recordEvents(manager, who, at, [{ what: 'loading', tourId, sentence: `${made.showName}: ${sentence}` }]);
    return ok({ answer: { draftId, changes }, stoppedBy: made.stoppedBy });
  }
}
