import type { EntityManager } from 'typeorm';

/**
 * Every examination in its order, a corrected one with what corrected it, and incidents with the examinations that came before them.
 * $1 the one that has them, $2 the one that gets them and has none yet.
 */
const sameRecords = [
  `WITH old AS (SELECT ordered.*, nextval(pg_get_serial_sequence('examination', 'id')) AS made
     FROM (SELECT * FROM examination WHERE item_id = $1 ORDER BY id) ordered)
   INSERT INTO examination (id, item_id, data, recorded_by, recorded_by_id, recorded_at, supersedes, reason) OVERRIDING SYSTEM VALUE
   SELECT made, $2, data, recorded_by, recorded_by_id, recorded_at,
     (SELECT corrected.made FROM old corrected WHERE corrected.id = old.supersedes), reason FROM old ORDER BY old.made`,
  `WITH old AS (SELECT id, row_number() OVER (ORDER BY id) AS number FROM examination WHERE item_id = $1),
     made AS (SELECT id, row_number() OVER (ORDER BY id) AS number FROM examination WHERE item_id = $2)
   INSERT INTO incident (item_id, on_day, what, after_examination)
   SELECT $2, on_day, what, CASE WHEN after_examination IS NULL THEN NULL ELSE
     coalesce((SELECT max(made.id) FROM old JOIN made USING (number) WHERE old.id <= after_examination), 0) END
   FROM incident WHERE item_id = $1 ORDER BY id`,
];

/** Records of one item are records of another as well: written once more for it, so that it is judged by them as the first one is and shows its whole life. */
export async function copyRecords(manager: EntityManager, from: string, to: string): Promise<void> {
  for (const statement of sameRecords) await manager.query(statement, [from, to]);
}
