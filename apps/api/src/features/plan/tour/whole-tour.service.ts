import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { BadInput } from '#kernel';
import { BadInputError, NotFoundError } from '../../../platform/faults/fault.js';
import type { Author } from '../../../platform/sign-in/person.js';
import { Jobs } from '../../../planning/jobs/jobs.js';
import { rowsOf } from '../../../planning/snapshot/queryable.js';
import { type TourPlanOnFile, loadTourPlan } from './tour-plan.reader.js';
import type { WholeTourSubject } from './whole-tour.task.js';

/** A move may count this much at most and this little at least: beyond that one of the two places would not count at all. */
const [leastWeight, mostWeight] = [0.1, 100];

/** Asks for tours planned as a whole, and tells of them. */
@Injectable()
export class WholeTourService {
  constructor(
    private readonly jobs: Jobs,
    private readonly dataSource: DataSource,
  ) {}

  onFile(tourId: string): Promise<TourPlanOnFile | null> {
    return loadTourPlan(this.dataSource.manager, tourId);
  }

  /** Prep and all load-ins together; a tour that is being planned so already is waited for. */
  plan(subject: WholeTourSubject, who: Author): Promise<string> {
    const faults = faultsIn(subject);
    if (faults.length > 0) throw new BadInputError(faults);
    const { tourId } = subject;
    return this.jobs.ask(async (manager) => {
      const going = await this.jobs.going(manager, 'tour', tourId, '');
      if (going) return going;
      const [tour] = await rowsOf<{ shows: number }>(
        manager,
        `SELECT jsonb_array_length(data -> 'shows') AS shows FROM tour WHERE id = $1`,
        [tourId],
      );
      if (!tour) throw new NotFoundError(`The tour ${tourId.slice(0, 40)}`);
      if (subject.fixedUntil > tour.shows)
        throw new BadInputError([{ field: 'fixedUntil', value: subject.fixedUntil, wanted: `0 to ${tour.shows}, the shows of the tour` }]);
      return { kind: 'tour', tourId, showId: '', subject, urgent: true, askedBy: who };
    });
  }
}

function faultsIn({ weights, fixedUntil }: WholeTourSubject): BadInput[] {
  const isWeight = (value: number) => value >= leastWeight && value <= mostWeight;
  return [
    ...(['depot', 'dock'] as const).flatMap((field) =>
      isWeight(weights[field]) ? [] : [{ field, value: weights[field], wanted: `a weight of ${leastWeight} to ${mostWeight}` }],
    ),
    ...(fixedUntil >= 0 ? [] : [{ field: 'fixedUntil', value: fixedUntil, wanted: '0 or the number of the last show that stays' }]),
  ];
}
