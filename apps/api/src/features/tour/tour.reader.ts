import { Injectable } from '@nestjs/common';
import { type EntityManager, IsNull } from 'typeorm';
import type { BadInput } from '#kernel';
import { type Kit, checkTourFile } from '#tour-file';
import { NotFoundError } from '../../platform/faults/fault.js';
import { TourRow } from './rows.js';

/** Tours as they are on file, for other features to read. */
@Injectable()
export class TourReader {
  /** What would be wrong in the tours on file if the register were this one; empty when nothing. */
  async faultsWith(manager: EntityManager, kit: Kit): Promise<readonly BadInput[]> {
    const rows = await this.tours(manager);
    return rows.flatMap((row) =>
      checkTourFile({ format: 'cartwright tour 1', ...kit, bookings: [], tour: row.data })
        .filter((fault) => fault.field.startsWith('tour.'))
        .map((fault) => ({ ...fault, field: `${row.name}: ${fault.field}` })),
    );
  }

  /** Those that have not been removed. */
  async tours(manager: EntityManager): Promise<TourRow[]> {
    return manager.getRepository(TourRow).find({ where: { removedAt: IsNull() }, order: { prepFrom: 'ASC', id: 'ASC' } });
  }

  async tour(manager: EntityManager, id: string): Promise<TourRow> {
    const row = await manager.getRepository(TourRow).findOneBy({ id });
    if (!row) throw new NotFoundError(`The tour ${id}`);
    return row;
  }
}
