import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError } from '../../../platform/faults/fault.js';
import type { Author } from '../../../platform/sign-in/person.js';
import { Jobs } from '../../../planning/jobs/jobs.js';
import { quarantineItem } from '../../register/kit.writer.js';
import { PlanReader } from '../stored/plan.reader.js';
import { showMustExist } from '../stored/show-must-exist.js';
import type { SwapSubject } from './swap.task.js';

/** Asks for plans: what is decided at once is decided here, the planning itself is a job. */
@Injectable()
export class MakeService {
  constructor(
    private readonly jobs: Jobs,
    private readonly plans: PlanReader,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /**
   * The draft of the show from everything as it now is. Where it is being planned already, that job is given back: what is saved in the end fits the inputs
   * of that moment, whoever asked first.
   */
  make(tourId: string, showId: string, who: Author): Promise<string> {
    return this.jobs.ask(async (manager) => {
      const going = await this.jobs.going(manager, 'make', tourId, showId);
      if (going) return going;
      await showMustExist(manager, tourId, showId);
      return { kind: 'make', tourId, showId, subject: { tourId, showId }, urgent: true, askedBy: who };
    });
  }

  /** A box failed: it is quarantined at once, whatever becomes of the draft that does without it. */
  swap(planId: string, serial: string, reason: string, who: Author): Promise<string> {
    const why = reason.trim().replace(/\.$/, '');
    if (why === '' || why.length > 300)
      throw new BadInputError([{ field: 'reason', value: reason.slice(0, 80), wanted: 'a sentence of 1 to 300 characters' }]);
    return this.jobs.ask(async (manager) => {
      const { tourId, showId } = await this.plans.headInForce(manager, planId);
      await showMustExist(manager, tourId, showId);
      const showName = await this.plans.nameOfShowThatFlies(manager, tourId, showId, serial);
      if (showName === null)
        throw new BadInputError([{ field: 'serial', value: serial.slice(0, 80), wanted: 'a box of the plan of this show' }]);
      await quarantineItem(manager, serial, why);
      await recordEvents(manager, who, this.clock.now(), [
        { what: 'quarantined', itemId: serial, tourId, sentence: `Failed, taken out of ${showName}: ${why}.` },
      ]);
      const subject: SwapSubject = { tourId, showId, serial };
      return { kind: 'swap', tourId, showId, subject, urgent: true, askedBy: who };
    });
  }

  /** Looks longer for fewer moves and shorter loads; a search that is going already is given back. */
  search(tourId: string, showId: string, who: Author): Promise<string> {
    return this.jobs.ask(async (manager) => {
      const going = await this.jobs.going(manager, 'search', tourId, showId);
      if (going) return going;
      await showMustExist(manager, tourId, showId);
      await recordEvents(manager, who, this.clock.now(), [{ what: 'asked', tourId, sentence: 'Asked for a longer search of the trucks.' }]);
      return { kind: 'search', tourId, showId, subject: { tourId, showId }, urgent: false, askedBy: who };
    });
  }
}
