import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { BadInput } from '#kernel';
import { type Booking, type Kit, type TourFile, checkTourFile } from '#tour-file';
import { NotFoundError } from '../../platform/graphql/fault.js';
import { withLoading } from '../loading/loading.reader.js';
import { CountReader } from '../count/count.reader.js';
import { KitReader } from '../register/kit.reader.js';
import { TourRow } from './rows.js';

/**
 * One load for a plan: the register, the rules, the tour, and what other tours hold, in the shape of a tour file. What was counted at return in this
 * house, by whichever tour, is added to what the tour itself says was counted.
 */
@Injectable()
export class TourFileReader {
  constructor(
    private readonly kit: KitReader,
    private readonly counts: CountReader,
  ) {}

  async load(manager: EntityManager, tourId: string): Promise<TourFile> {
    const row = await manager.getRepository(TourRow).findOneBy({ id: tourId });
    if (!row) throw new NotFoundError(`The tour ${tourId}`);
    const { catalogue, systems, examinationRules, loadRules, items } = await this.kit.load(manager);
    return {
      format: 'cartwright tour 1',
      catalogue,
      systems,
      examinationRules,
      loadRules,
      items,
      bookings: await this.otherBookings(manager, row.name),
      tour: { ...(await withLoading(manager, row.data)), spares: await this.counts.learned(manager, row.data.spares) },
    };
  }

  /** What would be wrong in the tours on file if the register were this one; empty when nothing. */
  async faultsWith(manager: EntityManager, kit: Kit): Promise<readonly BadInput[]> {
    const rows = await this.tours(manager);
    return rows.flatMap((row) =>
      checkTourFile({ format: 'cartwright tour 1', ...kit, bookings: [], tour: row.data })
        .filter((fault) => fault.field.startsWith('tour.'))
        .map((fault) => ({ ...fault, field: `${row.name}: ${fault.field}` })),
    );
  }

  async tours(manager: EntityManager): Promise<TourRow[]> {
    return manager.getRepository(TourRow).find({ order: { prepFrom: 'ASC', id: 'ASC' } });
  }

  async tour(manager: EntityManager, id: string): Promise<TourRow> {
    const row = await manager.getRepository(TourRow).findOneBy({ id });
    if (!row) throw new NotFoundError(`The tour ${id}`);
    return row;
  }

  private async otherBookings(manager: EntityManager, tourName: string): Promise<Booking[]> {
    const rows: { item: string; count: number | null; from: string; to: string; tour: string }[] = await manager.query(
      `SELECT item_id AS item, count, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", tour_name AS tour
       FROM booking WHERE tour_name <> $1 AND (hold_until IS NULL OR hold_until > now()) ORDER BY lower(period), item_id, tour_name`,
      [tourName],
    );
    return rows.map(({ count, ...booking }) => ({ ...booking, ...(count === null ? {} : { count }) }));
  }
}
