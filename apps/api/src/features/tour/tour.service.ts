import { Inject, Injectable } from '@nestjs/common';
import { type Tour, tour as tourSchema } from '#tour-file';
import { readInput } from '#kernel';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { movePromises } from '../plan/bookings/booking.writer.js';
import { TourRow } from './rows.js';
import { adoptPromises, clearRemoved, nameFaults, renamePromises } from './tour.writer.js';
import { TourChecks } from './tour-checks.js';
import { droppedFaults, notRemovedFaults, versionFaults } from './tour-faults.js';

/** Saves a tour whole: shape, then everything that has to agree with the register; an older version is refused. */
@Injectable()
export class TourService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly checks: TourChecks,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async save(input: unknown, expectedVersion: number | null, who: SignedIn): Promise<TourRow> {
    const read = readInput(tourSchema, input);
    if (!read.ok) throw new BadInputError(read.error);
    const outcome = await this.unitOfWork.run<TourRow>(async (manager) => {
      const rows = manager.getRepository(TourRow);
      if (expectedVersion === null) await clearRemoved(manager, read.value);
      const before = await rows.findOneBy({ id: read.value.id });
      const isRenamed = before?.name !== read.value.name;
      const faults = [
        ...versionFaults(before, expectedVersion),
        ...notRemovedFaults(before),
        ...droppedFaults(before, read.value),
        ...(await this.checks.takenIdFaults(manager, read.value)),
        ...(isRenamed ? await nameFaults(manager, read.value, before === null) : []),
        ...(await this.checks.faults(manager, read.value)),
        ...(isMoved(before, read.value) ? await movePromises(manager, read.value) : []),
      ];
      if (faults.length > 0) throw new BadInputError(faults);
      const { id, name, prepFrom, returnTo } = read.value;
      const row = { id, name, prepFrom, returnTo, version: (before?.version ?? 0) + 1, data: read.value, written: before?.written ?? null };
      await rows.save(row);
      if (!before) await adoptPromises(manager, row);
      else if (isRenamed) await renamePromises(manager, row);
      await recordEvents(manager, who, this.clock.now(), [
        { what: before ? 'changed' : 'made', tourId: id, sentence: `${before ? 'Changed' : 'Made'} the tour ${name}.` },
      ]);
      return { ok: true, value: row };
    });
    if (!outcome.ok) throw new Error('a tour is never refused');
    return outcome.value;
  }
}

const isMoved = (before: TourRow | null, { prepFrom, returnTo }: Tour): boolean =>
  before !== null && (before.prepFrom !== prepFrom || before.returnTo !== returnTo);
