import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { PackPlan } from '#pack-plan';
import type { BookingClash } from '../plan.types.js';
import { BookingRow } from '../stored/rows.js';

export type Uses = PackPlan['uses'];

/** The tour's promises from its released plans: every serial once, of each batch the most that one of its shows needs. */
export function usesTogether(plans: readonly Uses[]): Uses {
  const together = new Map<string, number | null>();
  for (const { item, count } of plans.flat()) together.set(item, count === null ? null : Math.max(count, together.get(item) ?? 0));
  return [...together].sort(([a], [b]) => (a < b ? -1 : 1)).map(([item, count]) => ({ item, count }));
}

/**
 * Replaces what a tour holds by these uses, first prep day to last return day. Batches are locked in the order of their names; the overlap of serials is
 * left to the exclusion constraint, which looks when the transaction ends.
 */
export async function replaceBookings(
  manager: EntityManager,
  { id: tourId, name }: { readonly id: string; readonly name: string },
  from: string,
  to: string,
  uses: Uses,
): Promise<readonly BookingClash[]> {
  const clashes = await findClashes(
    manager,
    tourId,
    from,
    to,
    uses.filter((each) => each.count === null).map((each) => each.item),
  );
  const batchClashes = await findBatchClashes(manager, tourId, from, to, uses);
  if (clashes.length + batchClashes.length > 0) return [...clashes, ...batchClashes];
  const rows = manager.getRepository(BookingRow);
  await rows.delete({ holderKind: 'tour', holderId: tourId });
  const holder = { holderKind: 'tour', holderId: tourId, tourName: name } as const;
  await rows.insert(uses.map(({ item, count }) => ({ id: randomUUID(), itemId: item, ...holder, period: `[${from},${to}]`, count })));
  return [];
}

/** Holds whose time is over are gone before anybody looks. */
export async function dropExpiredHolds(manager: EntityManager, now: Date): Promise<void> {
  await manager.query('DELETE FROM booking WHERE hold_until <= $1', [now]);
}

/** Who else than this tour holds these serials on these days; anybody where there is no tour. */
export async function findClashes(
  manager: EntityManager,
  tourId: string | null,
  from: string,
  to: string,
  items: readonly string[],
): Promise<BookingClash[]> {
  return manager.query(
    `SELECT item_id AS item, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", tour_name AS tour FROM booking
     WHERE item_id = ANY($1) AND (holder_kind, holder_id) IS DISTINCT FROM ('tour', $2::text) AND count IS NULL AND period && daterange($3, $4, '[]') ORDER BY item_id`,
    [items, tourId, from, to],
  );
}

async function findBatchClashes(manager: EntityManager, tourId: string, from: string, to: string, uses: Uses): Promise<BookingClash[]> {
  const batches = uses.filter((each) => each.count !== null);
  if (batches.length === 0) return [];
  const ids = batches.map((each) => each.item).sort();
  const held: { id: string; count: number | null }[] = await manager.query(
    `SELECT id, count FROM item WHERE id = ANY($1) ORDER BY id FOR UPDATE`,
    [ids],
  );
  const counts = new Map(held.map((each) => [each.id, each.count ?? 0]));
  const others: { item: string; from: string; to: string; tour: string; count: number }[] = await manager.query(
    `SELECT item_id AS item, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", tour_name AS tour, count FROM booking
     WHERE item_id = ANY($1) AND (holder_kind, holder_id) IS DISTINCT FROM ('tour', $2::text) AND count IS NOT NULL AND period && daterange($3, $4, '[]')`,
    [ids, tourId, from, to],
  );
  return batches.flatMap(({ item, count }) => {
    const mine = others.filter((each) => each.item === item);
    // The most that others hold at once is reached on the first day of one of their promises, or on ours.
    const days = [from, ...mine.map((each) => (each.from > from ? each.from : from))];
    const most = Math.max(
      ...days.map((day) => mine.filter((each) => each.from <= day && each.to >= day).reduce((sum, each) => sum + each.count, 0)),
    );
    return most + count! > (counts.get(item) ?? 0) ? mine.map(({ count: _count, ...clash }) => clash) : [];
  });
}
