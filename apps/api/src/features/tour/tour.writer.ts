import type { EntityManager } from 'typeorm';
import type { BadInput } from '#kernel';
import type { Tour } from '#tour-file';
import { TourRow } from './rows.js';

/** Puts a tour on file with the text that it came from; refused where its id or name is taken. */
export async function addTour(manager: EntityManager, tour: Tour, written: object): Promise<readonly BadInput[]> {
  const rows = manager.getRepository(TourRow);
  const { id, name, prepFrom, returnTo } = tour;
  await clearRemoved(manager, tour);
  const clash = await rows.findOne({ where: [{ id }, { name }] });
  if (clash) return [{ field: 'tour.id', value: id, wanted: wantedBeside(clash) }];
  await rows.insert({ id, name, prepFrom, returnTo, version: 1, data: tour as object, written });
  await adoptPromises(manager, tour);
  return [];
}

const wantedBeside = ({ name, removedAt }: TourRow): string =>
  removedAt
    ? `another id and name: ${name} was removed, and what was done with it is kept; or put it back`
    : `a tour that is not on file yet; ${name} is. Remove it there or give this one another id and name`;

/** A removed tour of which nothing was ever released, wished at a dock or counted makes room for another of its id or name. */
export async function clearRemoved(manager: EntityManager, { id, name }: Pick<Tour, 'id' | 'name'>): Promise<void> {
  const rows: { id: string }[] = await manager.query(
    `SELECT id FROM tour WHERE removed_at IS NOT NULL AND (id = $1 OR name = $2)
       AND NOT EXISTS (SELECT FROM pack_plan WHERE tour_id = tour.id AND state <> 'draft')
       AND NOT EXISTS (SELECT FROM loading_act WHERE tour_id = tour.id) AND NOT EXISTS (SELECT FROM hardware_count WHERE tour_id = tour.id)
       AND NOT EXISTS (SELECT FROM place_answer WHERE tour_id = tour.id)`,
    [id, name],
  );
  for (const gone of rows)
    for (const statement of [
      'DELETE FROM job WHERE tour_id = $1',
      'DELETE FROM pack_plan WHERE tour_id = $1',
      `DELETE FROM booking WHERE holder_kind = 'tour' AND holder_id = $1`,
      'DELETE FROM tour WHERE id = $1',
    ])
      await manager.query(statement, [gone.id]);
}

/** Promises that were told of this tour while it was known by name alone are its own from now on. */
export async function adoptPromises(manager: EntityManager, { id, name }: Pick<Tour, 'id' | 'name'>): Promise<void> {
  await manager.query(`UPDATE booking SET holder_kind = 'tour', holder_id = $1 WHERE holder_kind = 'named' AND holder_id = $2`, [id, name]);
}

/** The promises of a tour are called as it is called. */
export async function renamePromises(manager: EntityManager, { id, name }: Pick<Tour, 'id' | 'name'>): Promise<void> {
  await manager.query(`UPDATE booking SET tour_name = $2 WHERE holder_kind = 'tour' AND holder_id = $1 AND tour_name <> $2`, [id, name]);
}

/** A tour may not take the name of another, of a hold, or of somebody who is known by name alone: people could not tell them apart. */
export async function nameFaults(manager: EntityManager, tour: Pick<Tour, 'id' | 'name'>, isNew: boolean): Promise<readonly BadInput[]> {
  const rows: { kind: string }[] = await manager.query(
    `SELECT 'tour' AS kind FROM tour WHERE name = $2 AND id <> $1
     UNION SELECT holder_kind FROM booking WHERE tour_name = $2 AND (holder_kind = 'hold' OR holder_kind = 'named' AND NOT $3)`,
    [tour.id, tour.name, isNew],
  );
  return rows.slice(0, 1).map(({ kind }) => ({
    field: 'tour.name',
    value: tour.name,
    wanted: `a name that ${kind === 'tour' ? 'no other tour' : 'nobody else who holds items'} has`,
  }));
}
