import type { EntityManager } from 'typeorm';
import { BadInputError, NotFoundError } from '../../../platform/faults/fault.js';

/** The show must stand on its tour, and the tour must not have been removed. */
export async function showMustExist(manager: EntityManager, tourId: string, showId: string): Promise<void> {
  const [row] = await manager.query<{ known: boolean; removed: boolean }[]>(
    `SELECT jsonb_path_exists(data, '$.shows[*] ? (@.id == $show)', jsonb_build_object('show', $2::text)) AS known, removed_at IS NOT NULL AS removed
     FROM tour WHERE id = $1`,
    [tourId, showId],
  );
  if (!row) throw new NotFoundError(`The tour ${tourId.slice(0, 80)}`);
  if (row.removed)
    throw new BadInputError([{ field: 'tourId', value: tourId, wanted: 'a tour that has not been removed; put it back first' }]);
  if (!row.known) throw new NotFoundError(`The show ${showId.slice(0, 80)}`);
}
