import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type Result, ok, refuse } from '#kernel';
import type { WholeTourAnswer } from '#pack-plan';
import { type Words, tell } from '#words';
import type { JobHandler, Saved } from '../../../planning/jobs/job-handler.js';
import type { JobRefusal } from '../../../planning/jobs/jobs.js';
import { type JobRow, authorOf } from '../../../planning/jobs/rows.js';
import { taskFile } from '../../../planning/solve/solver-pool.js';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { WORDS } from '../../../platform/config/words.js';
import { recordEvents } from '../../../platform/event-log.js';
import { authorId } from '../../../platform/sign-in/person.js';
import { TourPlanRow } from './rows.js';

/** Keeps the plan of a whole tour with the tour, in the place of an older one. */
@Injectable()
export class WholeTourHandler implements JobHandler<WholeTourAnswer> {
  readonly kind = 'tour';
  readonly task = taskFile(import.meta.url, './whole-tour.task.js');
  readonly effort = 'usual';

  constructor(
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  async save(manager: EntityManager, job: JobRow, answer: WholeTourAnswer): Promise<Result<Saved, JobRefusal>> {
    if (answer.kind === 'cannot') return refuse({ code: answer.fact.code, sentence: tell(this.words.refusals, answer.fact) });
    const { tourId } = job;
    const { tour } = answer;
    const who = authorOf(job);
    const madeAt = this.clock.now();
    await manager.getRepository(TourPlanRow).save({ tourId, plan: tour, madeAt, madeById: authorId(who) });
    const moves = tour.stops.reduce((sum, stop) => sum + stop.moves.length, 0);
    const kept = tour.fixedUntil > 0 ? `, the first ${tour.fixedUntil} shows as they were` : '';
    const sentence = `Planned the tour as a whole: ${moves} box moves in ${tour.stops.length} shows${kept}.`;
    await recordEvents(manager, who, madeAt, [{ what: 'planned', tourId, sentence }]);
    return ok({ answer: { tourId }, stoppedBy: tour.status === 'optimal' ? 'proof' : 'work' });
  }
}
