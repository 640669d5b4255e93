import type { EntityManager } from 'typeorm';
import type { FloorRecord, MoveMade } from '#pack-plan';

const since = `WITH first AS (
  SELECT max(id) AS id FROM event WHERE item_id = $2 AND what = 'moved' AND tour_id = $1 AND from_place = $3 AND place = $4
)
SELECT what, item_id AS box, from_place AS "from", place AS "to" FROM event, first
WHERE event.id >= first.id AND (
  what IN ('moved', 'moved back') AND from_place IS NOT NULL
  OR what = 'stacked' AND (item_id = ANY ($5) OR regexp_replace(place, ' [0-9]+$', '') = ANY ($5))
) ORDER BY event.id`;

interface Row {
  readonly what: 'moved' | 'moved back' | 'stacked';
  readonly box: string;
  readonly from: string;
  readonly to: string;
}

/** What was done on the floor from the last time that this move was made; nothing where it never was. */
export async function recordsSince(manager: EntityManager, tourId: string, { box, from, to }: MoveMade): Promise<readonly FloorRecord[]> {
  const concerned = [box, from, to].filter((each) => each !== 'floor');
  const rows: readonly Row[] = await manager.query(since, [tourId, box, from, to, concerned]);
  return rows.map(({ what, ...move }): FloorRecord => (what === 'stacked' ? { what: 'read anew' } : { what, ...move }));
}

/** Number of the move of the plan's own list that is ticked as this one. */
export async function tickedNumberOf(manager: EntityManager, planId: string, { box, from, to }: MoveMade): Promise<number | null> {
  const [row]: { number: number | null }[] = await manager.query(
    `SELECT max(tick.place) AS number FROM tick
     JOIN plan_part part ON part.plan_id = tick.plan_id AND part.part = 'carts'
     CROSS JOIN jsonb_array_elements(part.data -> 'moves') move
     WHERE tick.plan_id = $1 AND tick.kind = 'move' AND (move ->> 'number')::int = tick.place
       AND move ->> 'box' = $2 AND move ->> 'from' = $3 AND move ->> 'to' = $4`,
    [planId, box, from, to],
  );
  return row?.number ?? null;
}
