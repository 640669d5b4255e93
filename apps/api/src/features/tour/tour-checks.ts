import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { BadInput } from '#kernel';
import { type Tour, checkTourFile } from '#tour-file';
import { KitReader } from '../register/kit.reader.js';
import { RemovedShowRow } from './rows.js';

/** A tour against the register as it stands. */
@Injectable()
export class TourChecks {
  constructor(private readonly kit: KitReader) {}

  async faults(manager: EntityManager, tour: Tour): Promise<readonly BadInput[]> {
    const kit = await this.kit.load(manager);
    const faults = checkTourFile({ format: 'cartwright tour 1', ...kit, bookings: [], tour });
    return faults.filter((each) => each.field.startsWith('tour'));
  }

  /** Plans, ticks and revisions of a removed show stay under its id, which no other show may take. */
  async takenIdFaults(manager: EntityManager, tour: Tour): Promise<BadInput[]> {
    const removed = await manager.getRepository(RemovedShowRow).findBy({ tourId: tour.id, showId: In(tour.shows.map((each) => each.id)) });
    return removed.map(({ showId, data }) => ({
      field: `tour.shows[${tour.shows.findIndex((each) => each.id === showId)}].id`,
      value: showId,
      wanted: `an id that no removed show has; ${data.name}, ${data.from}, was removed and can be put back`,
    }));
  }
}
