import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { recordEvents } from '../../../platform/event-log.js';
import { type Author, authorId } from '../../../platform/sign-in/person.js';
import type { MadePlan, OpenMoves } from '../../../planning/solve/made-plan.js';
import { Jobs } from '../../../planning/jobs/jobs.js';
import { noteFresh } from './plan-freshness.reader.js';
import { PackPlanRow } from './rows.js';
import { carryTicks, readTicks } from './tick.repository.js';

/** A plan on file whose box moves are not proved to be the fewest. */
export interface ImproveSubject extends OpenMoves {
  readonly planId: string;
}

/** Drafts of a show, written inside the caller's unit of work. */
@Injectable()
export class PlanWriter {
  constructor(
    private readonly jobs: Jobs,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /**
   * The draft of the show, in the place of an older draft; gives its id. Ticks of the plan `fromId` that still hold are kept. Where its box moves are
   * not proved to be the fewest, work on it goes on as a job that nobody waits for.
   */
  async putDraft(manager: EntityManager, made: MadePlan, who: Author, fromId?: string): Promise<string> {
    const { tourId, showId } = made;
    const id = randomUUID();
    const ticks = fromId ? await readTicks(manager, fromId) : [];
    await manager.getRepository(PackPlanRow).delete({ tourId, showId, state: 'draft' });
    await manager.query(
      `INSERT INTO pack_plan (id, tour_id, show_id, state, made_at, made_by, made_by_id, plan) VALUES ($1, $2, $3, 'draft', $4, $5, $6, $7::jsonb)`,
      [id, tourId, showId, this.clock.now(), who.name, authorId(who), made.text],
    );
    if (made.isFresh) await noteFresh(manager, id);
    await carryTicks(manager, ticks, new Set(made.standing), id);
    await recordEvents(manager, who, this.clock.now(), [{ what: 'planned', tourId, sentence: `Made a draft plan of ${made.showName}.` }]);
    await this.jobs.overtake(manager, 'improve', tourId, showId);
    if (made.open) {
      const subject: ImproveSubject = { planId: id, ...made.open };
      await this.jobs.put(manager, { kind: 'improve', tourId, showId, subject, urgent: false, askedBy: who });
    }
    return id;
  }
}
