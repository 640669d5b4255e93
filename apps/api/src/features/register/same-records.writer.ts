import type { EntityManager } from 'typeorm';

/** Examinations that stand, in their order, and incidents with the examinations that came before them. $1 the one that has them, $2 the one that gets them. */
const sameRecords = [
  `INSERT INTO examination (item_id, data, recorded_by, recorded_by_id, recorded_at)
   SELECT $2, data, recorded_by, recorded_by_id, recorded_at FROM examination
   WHERE item_id = $1 AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = examination.id) ORDER BY id`,
  `WITH old AS (SELECT id, row_number() OVER (ORDER BY id) AS number FROM examination WHERE item_id = $1
       AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = examination.id)),
     made AS (SELECT id, row_number() OVER (ORDER BY id) AS number FROM examination WHERE item_id = $2)
   INSERT INTO incident (item_id, on_day, what, after_examination)
   SELECT $2, on_day, what, CASE WHEN after_examination IS NULL THEN NULL ELSE
     coalesce((SELECT max(made.id) FROM old JOIN made USING (number) WHERE old.id <= after_examination), 0) END
   FROM incident WHERE item_id = $1 ORDER BY id`,
];

/** Records of one item are records of another as well: written once more for it, so that it is judged by them as the first one is. */
export async function copyRecords(manager: EntityManager, from: string, to: string): Promise<void> {
  for (const statement of sameRecords) await manager.query(statement, [from, to]);
}
