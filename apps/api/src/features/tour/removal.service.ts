import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { endPromises, promiseAnew } from '../plan/bookings/booking.writer.js';
import { supersedeReleased } from '../plan/stored/plan-state.writer.js';
import { PlaceDaysReader } from '../venue/place-days.reader.js';
import { RemovedShowRow, TourRow } from './rows.js';
import { TourChecks } from './tour-checks.js';
import { notRemovedFaults, versionFaults } from './tour-faults.js';

/** Takes tours and shows out of sight and puts them back. What was released stays on file and is superseded; what was promised is given back. */
@Injectable()
export class RemovalService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly checks: TourChecks,
    private readonly places: PlaceDaysReader,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  removeShow(tourId: string, showId: string, expectedVersion: number, who: SignedIn): Promise<TourRow> {
    return this.change(tourId, expectedVersion, async (manager, row) => {
      refuse(notRemovedFaults(row));
      const show = row.data.shows.find((each) => each.id === showId);
      if (!show) throw new NotFoundError(`The show ${showId.slice(0, 80)}`);
      if (row.data.shows.length === 1)
        throw new BadInputError([
          { field: 'showId', value: showId, wanted: 'one of several shows: this is the last one of its tour; remove the tour' },
        ]);
      const shows = row.data.shows.filter((each) => each !== show);
      await manager
        .getRepository(RemovedShowRow)
        .insert({ tourId, showId, data: show as object, removedAt: this.clock.now(), removedById: who.id });
      const revision = await supersedeReleased(manager, tourId, showId);
      const givenBack = await promiseAnew(
        manager,
        row,
        shows.map((each) => each.id),
      );
      await this.say(
        manager,
        who,
        tourId,
        'removed',
        `Took the show ${show.name} off the tour${revision === 0 ? '' : '; its revision is superseded'}${givenBack === 0 ? '' : `; ${givenBack} items are given back`}.`,
      );
      return { ...row, data: { ...row.data, shows } };
    });
  }

  putShowBack(tourId: string, showId: string, expectedVersion: number, who: SignedIn): Promise<TourRow> {
    return this.change(tourId, expectedVersion, async (manager, row) => {
      refuse(notRemovedFaults(row));
      const removed = manager.getRepository(RemovedShowRow);
      const kept = await removed.findOneBy({ tourId, showId });
      if (!kept) throw new NotFoundError(`The removed show ${showId.slice(0, 80)}`);
      const data = { ...row.data, shows: [...row.data.shows, kept.data].sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0)) };
      refuse(await this.checks.faults(manager, data));
      await removed.delete({ tourId, showId });
      await this.say(manager, who, tourId, 'changed', `Put the show ${kept.data.name} back.`);
      return { ...row, data };
    });
  }

  removeTour(tourId: string, expectedVersion: number, who: SignedIn): Promise<TourRow> {
    return this.change(tourId, expectedVersion, async (manager, row) => {
      refuse(notRemovedFaults(row));
      const revisions = await supersedeReleased(manager, tourId);
      const givenBack = await endPromises(manager, tourId, (await this.places.now()).at(row.data.depot));
      const closed = revisions === 0 ? '' : `; ${revisions} ${revisions === 1 ? 'revision is' : 'revisions are'} superseded`;
      const said = `Removed the tour ${row.name}${closed}${givenBack === 0 ? '' : `; ${givenBack} items are given back`}.`;
      await this.say(manager, who, tourId, 'removed', said);
      return { ...row, removedAt: this.clock.now(), removedById: who.id };
    });
  }

  putTourBack(tourId: string, expectedVersion: number, who: SignedIn): Promise<TourRow> {
    return this.change(tourId, expectedVersion, async (manager, row) => {
      refuse(await this.checks.faults(manager, row.data));
      await this.say(manager, who, tourId, 'changed', `Put the tour ${row.name} back.`);
      return { ...row, removedAt: null, removedById: null };
    });
  }

  private async change(
    tourId: string,
    expectedVersion: number,
    work: (manager: EntityManager, row: TourRow) => Promise<TourRow>,
  ): Promise<TourRow> {
    const outcome = await this.unitOfWork.run<TourRow>(async (manager) => {
      const rows = manager.getRepository(TourRow);
      const row = await rows.findOneBy({ id: tourId });
      if (!row) throw new NotFoundError(`The tour ${tourId.slice(0, 80)}`);
      refuse(versionFaults(row, expectedVersion));
      const after = { ...(await work(manager, row)), version: row.version + 1 };
      await rows.save(after);
      return { ok: true, value: after };
    });
    if (!outcome.ok) throw new Error('a removal is never refused as data');
    return outcome.value;
  }

  private say(manager: EntityManager, who: SignedIn, tourId: string, what: string, sentence: string): Promise<void> {
    return recordEvents(manager, who, this.clock.now(), [{ what, tourId, sentence }]);
  }
}

function refuse(faults: ConstructorParameters<typeof BadInputError>[0]): void {
  if (faults.length > 0) throw new BadInputError(faults);
}
