import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import {
  type Fingerprint,
  type PackPlan,
  changesBetween,
  fingerprintOfIds,
  fingerprintOfItems,
  fingerprintWithoutItems,
  floorFits,
  itemsPart,
  landedKeyOf,
  partsOfItem,
  wholeFingerprint,
  withFloor,
} from '#pack-plan';
import { itemKinds } from '#tour-file';
import { type InputChange, keyOfPart, partOfKey } from '#trade';
import { loadItems } from '../../../planning/snapshot/kit-snapshot.js';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';
import { CLOCK, type Clock, dayIn } from '../../../platform/config/config.js';
import { zoneOfShow } from '../../venue/show-day.reader.js';

type Changes = readonly InputChange[];

interface Kept {
  readonly id: string;
  readonly tourId: string;
  readonly showId: string;
  readonly changes: Changes | null;
  readonly fits: boolean | null;
  readonly isFresh: boolean;
}

interface Told {
  readonly now: string;
  readonly isKnown: boolean;
  readonly changes: Changes | null;
  readonly fits: boolean | null;
  readonly hasEnded: boolean | null;
  readonly lines: readonly (readonly [kind: string, key: string])[];
}

/**
 * Lines of `input_change` that the kept snapshot did not see and that may concern the plan. A line `forgotten` stands for all lines written before it:
 * to a snapshot that begins earlier (a plan saved late, or kept by a slower look) something may be missing, and its plan is worked out wholly.
 */
const unseen = `line.written_in >= pg_snapshot_xmin(kept.seen) AND CASE line.kind WHEN 'forgotten' THEN line.written_in > pg_snapshot_xmin(kept.seen)
  ELSE NOT pg_visible_in_snapshot(line.written_in, kept.seen) AND (line.kind <> 'tour' OR line.key = plan.tour_id) END`;

const look = `SELECT plan.id, plan.tour_id AS "tourId", plan.show_id AS "showId", kept.changes, kept.floor_fits AS fits,
  kept.cluster IS NOT DISTINCT FROM this_cluster() AND NOT EXISTS (SELECT FROM jsonb_array_elements(kept.changes) each WHERE jsonb_typeof(each) = 'array') AND (kept.holds_until IS NULL OR kept.holds_until > now())
    AND NOT EXISTS (SELECT FROM input_change line WHERE ${unseen}) AS "isFresh"
FROM pack_plan plan LEFT JOIN plan_freshness kept ON kept.plan_id = plan.id WHERE plan.id = ANY($1) AND plan.state <> 'superseded'`;

// One statement, so that what was kept, the lines since and the snapshot are of one moment: another look may have kept something since this one began.
// What is read afterwards is no older.
const whatChanged = `SELECT pg_current_snapshot()::text AS now, kept.cluster IS NOT DISTINCT FROM this_cluster() AS "isKnown",
  kept.changes, kept.floor_fits AS fits, kept.holds_until <= now() AS "hasEnded", coalesce(lines.lines, '[]') AS lines
FROM pack_plan plan LEFT JOIN plan_freshness kept ON kept.plan_id = plan.id LEFT JOIN LATERAL
  (SELECT jsonb_agg(DISTINCT jsonb_build_array(line.kind, line.key)) AS lines FROM input_change line WHERE ${unseen}) lines ON true
WHERE plan.id = $1`;

// A show whose last day is over, or on whose last day things come back already.
const showEnds = `SELECT plan.id, show->>'to' AS "to", ${zoneOfShow} AS zone,
  EXISTS (SELECT FROM floor_record WHERE tour_id = plan.tour_id AND floor_record.show_id = plan.show_id AND kind = 'returned') AS "isComingBack"
FROM pack_plan plan JOIN tour ON tour.id = plan.tour_id CROSS JOIN LATERAL jsonb_array_elements(tour.data->'shows') show
WHERE plan.id = ANY($1) AND plan.state <> 'superseded' AND show->>'id' = plan.show_id`;

const keep = `INSERT INTO plan_freshness (plan_id, cluster, seen, changes, floor_fits, holds_until)
  SELECT plan.id, this_cluster(), $2::pg_snapshot, $3::jsonb, $4::boolean, (SELECT min(hold_until) FROM booking WHERE hold_until > now())
  FROM pack_plan plan WHERE plan.id = $1
ON CONFLICT (plan_id) DO UPDATE SET cluster = excluded.cluster, seen = excluded.seen, changes = excluded.changes,
  floor_fits = excluded.floor_fits, holds_until = excluded.holds_until`;

const forget = `WITH horizon AS (SELECT pg_snapshot_xmin(kept.seen) AS xmin FROM plan_freshness kept
    JOIN pack_plan plan ON plan.id = kept.plan_id AND plan.state <> 'superseded' WHERE kept.cluster = this_cluster() ORDER BY pg_snapshot_xmin(kept.seen) LIMIT 1),
  gone AS (DELETE FROM input_change WHERE cluster <> this_cluster() OR written_in < (SELECT xmin FROM horizon) RETURNING cluster)
INSERT INTO input_change (kind, key, written_in) SELECT 'forgotten', '', xmin FROM horizon WHERE EXISTS (SELECT FROM gone WHERE cluster = this_cluster())`;

/**
 * Which inputs of a plan changed since it was made. What was found is kept with the database snapshot in which it was found: while nothing was written
 * since, a look is one statement; otherwise only what was written is hashed again. The whole register is read once for a plan that nobody looked at
 * yet, and after very large writes.
 */
@Injectable()
export class PlanFreshness {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** Changed inputs by plan; superseded plans are left out. What comes back changes no show that has been played. */
  async changed(planIds: readonly string[]): Promise<ReadonlyMap<string, Changes>> {
    if (planIds.length === 0) return new Map();
    const { manager } = this.dataSource;
    const over = await this.over(planIds);
    const kept: Kept[] = await manager.query(look, [planIds.filter((each) => !over.has(each))]);
    const found = new Map<string, Changes>([...over].map((each) => [each, []]));
    const register = new WholeRegister(manager);
    for (const each of kept) {
      const { changes, fits } = each.isFresh ? { changes: each.changes!, fits: each.fits! } : await workOut(manager, each, register);
      found.set(each.id, withFloor(changes, fits));
    }
    if (kept.some((each) => !each.isFresh)) await manager.query(forget);
    return found;
  }

  private async over(planIds: readonly string[]): Promise<ReadonlySet<string>> {
    const ends: { id: string; to: string; zone: string; isComingBack: boolean }[] = await this.dataSource.query(showEnds, [planIds]);
    const isOver = ({ to, zone, isComingBack }: (typeof ends)[number]) => {
      const day = dayIn(this.clock, zone ?? '');
      return isComingBack ? day >= to : day > to;
    };
    return new Set(ends.filter(isOver).map((each) => each.id));
  }
}

/** For a plan that is saved in the transaction in which its inputs were read: it is fresh as of that snapshot. */
export async function noteFresh(manager: EntityManager, planId: string): Promise<void> {
  await manager.query(
    `INSERT INTO plan_freshness (plan_id, cluster, seen, changes, floor_fits, holds_until)
     SELECT $1, this_cluster(), pg_current_snapshot(), '[]', true, (SELECT min(hold_until) FROM booking WHERE hold_until > now())
     WHERE current_setting('transaction_isolation') IN ('serializable', 'repeatable read') ON CONFLICT DO NOTHING`,
    [planId],
  );
}

/** Hashes of all items, worked out at most once. */
class WholeRegister {
  private items: Promise<Fingerprint> | undefined;
  constructor(private readonly manager: EntityManager) {}

  hashes(): Promise<Fingerprint> {
    this.items ??= loadItems(this.manager).then(fingerprintOfItems);
    return this.items;
  }
}

async function workOut(manager: EntityManager, plan: Kept, register: WholeRegister): Promise<{ changes: Changes; fits: boolean }> {
  const [told]: [Told] = await manager.query(whatChanged, [plan.id]);
  const { now, isKnown, hasEnded, lines, changes: kept } = told;
  const kinds = new Set(lines.map(([kind]) => kind));
  // What an earlier version kept of changes were names of parts: looked up anew.
  const whole = !isKnown || kept === null || kept.some(Array.isArray) || kinds.has('many') || kinds.has('forgotten');
  const set = whole || kinds.has('items');
  const rest = whole || hasEnded === true || [...kinds].some((kind) => !['item', 'items', 'stack'].includes(kind));
  const ids = lines.flatMap(([kind, key]) => (kind === 'item' ? [key] : []));
  const then = await fingerprintOfPlan(manager, plan.id, whole, rest, [...ids.flatMap(partsOfItem), ...(set ? [itemsPart] : [])]);
  const current: Fingerprint = {
    ...(whole ? await register.hashes() : fingerprintOfItems(ids.length > 0 ? await loadItems(manager, ids) : [])),
    ...(set ? fingerprintOfIds(await idsOnFile(manager)) : {}),
    ...(rest ? fingerprintWithoutItems(await loadTourFile(manager, plan.tourId, []), plan.showId, then) : {}),
  };
  const looked = new Set([...Object.keys(then), ...Object.keys(current)]);
  const changes = [
    ...(whole ? [] : kept.filter((each) => 'part' in each && !looked.has(keyOfPart(each.part)))),
    ...changesBetween(then, current, looked),
  ];
  const fits = whole || kinds.has('stack') ? await doesFloorFit(manager, plan.id) : told.fits!;
  await manager.query(keep, [plan.id, now, JSON.stringify(changes), fits]);
  return { changes, fits };
}

async function idsOnFile(manager: EntityManager): Promise<string[]> {
  const rows: { id: string }[] = await manager.query('SELECT id FROM item');
  return rows.map((row) => row.id);
}

/** Parts of a plan's fingerprint: all, or those that are not of items, and those named. */
async function fingerprintOfPlan(
  manager: EntityManager,
  planId: string,
  all: boolean,
  rest: boolean,
  named: readonly string[],
): Promise<Fingerprint> {
  const rows: { part: string; hash: string }[] = await manager.query(
    `SELECT each.key AS part, each.value AS hash FROM plan_part, jsonb_each_text(data) each WHERE plan_id = $1 AND part = 'fingerprint'
     AND ($2::boolean OR each.key = ANY($3) OR $4::boolean AND each.key <> ALL($5) AND split_part(each.key, ' ', 1) <> ALL($6) AND each.key NOT LIKE 'item:%')`,
    [planId, all, [...named, ...named.flatMap(landedNames)], rest, [itemsPart, ...landedNames(itemsPart)], itemKinds],
  );
  return wholeFingerprint(Object.fromEntries(rows.map(({ part, hash }) => [part, hash])));
}

/** A part under the name that earlier plans kept it with. */
function landedNames(key: string): string[] {
  const part = partOfKey(key);
  const name = part && landedKeyOf(part);
  return name === undefined ? [] : [name];
}

async function doesFloorFit(manager: EntityManager, planId: string): Promise<boolean> {
  const [row]: { data: PackPlan['carts'] }[] = await manager.query(`SELECT data FROM plan_part WHERE plan_id = $1 AND part = 'carts'`, [
    planId,
  ]);
  if (!row) return true;
  const stacks: { cart: string; boxes: string[] }[] = await manager.query(
    `SELECT stack_cart AS cart, array_agg(id ORDER BY stack_slot) AS boxes FROM item WHERE stack_cart = ANY($1) GROUP BY stack_cart`,
    [row.data.floorBefore.carts.map((each) => each.cart)],
  );
  const boxesOf = new Map(stacks.map((each) => [each.cart, each.boxes]));
  return floorFits({ carts: row.data }, (cart) => boxesOf.get(cart) ?? []);
}
