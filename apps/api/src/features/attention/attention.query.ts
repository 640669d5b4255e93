import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock, dayIn, today } from '../../platform/config/config.js';
import { BadInputError } from '../../platform/faults/fault.js';
import { type Connection, connectionOf, pageSize, readCursor } from '../../platform/graphql/paging.js';
import { addDays } from '#kernel';
import { type Words, saidOnce, tell } from '#words';
import { WORDS } from '../../platform/config/words.js';
import { zoneOfShow } from '../venue/show-day.reader.js';
import { barredActsOfShows } from '../plan/stored/barred-act.reader.js';
import { BarredReader } from '../plan/stored/barred.reader.js';
import { flyingHangs } from '../plan/stored/flying.reader.js';
import { PlanReader } from '../plan/stored/plan.reader.js';
import { PlanFreshness } from '../plan/stored/plan-freshness.reader.js';
import { type Note, type ShowInSight, attentionNotes, roles } from './attention.js';

// Every show that is not over, with the plan in force: the released one, else the draft.
const shows = `SELECT tour.id AS "tourId", show->>'id' AS "showId", show->>'name' AS name, show->>'from' AS "from", show->>'to' AS "to", ${zoneOfShow} AS zone,
  plan.id AS "planId", plan.state, plan.revision,
  coalesce((SELECT jsonb_agg(each) FROM plan_part, jsonb_array_elements(data) each WHERE plan_id = plan.id AND part = 'findings' AND each->>'weight' <> 'agrees'), '[]') AS findings,
  coalesce((SELECT jsonb_array_length(data->'loads') FROM plan_part WHERE plan_id = plan.id AND part = 'carts'), 0) AS loads,
  (SELECT count(*)::int FROM cart_check WHERE plan_id = plan.id) AS confirmed
FROM tour CROSS JOIN LATERAL jsonb_array_elements(tour.data->'shows') WITH ORDINALITY listed (show, number)
LEFT JOIN LATERAL (SELECT id, state, revision FROM pack_plan WHERE tour_id = tour.id AND show_id = show->>'id' AND state <> 'superseded'
  ORDER BY (state = 'released') DESC LIMIT 1) plan ON true
WHERE tour.removed_at IS NULL AND tour.return_to >= $1::date AND show->>'to' >= $1::text ORDER BY tour.prep_from, tour.id, number`;

/** What needs eyes today, one role's notes a page at a time. */
@Injectable()
export class AttentionQuery {
  constructor(
    private readonly dataSource: DataSource,
    private readonly freshness: PlanFreshness,
    private readonly plans: PlanReader,
    private readonly gate: BarredReader,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  private async barred(planIds: readonly string[]): Promise<ReadonlyMap<string, ShowInSight['barred']>> {
    const { manager } = this.dataSource;
    const said = await this.gate.ofEach(manager, planIds);
    const flying = await flyingHangs(
      manager,
      [...said].flatMap(([planId, items]) => (items.length > 0 ? [planId] : [])),
    );
    const found = new Map<string, ShowInSight['barred']>();
    for (const [planId, items] of said) {
      const up = flying.filter((each) => each.planId === planId);
      // What each concerns is looked up where something is in the air.
      const concerned = up.length > 0 ? await this.gate.of(manager, planId) : items.map((each) => ({ ...each, hangs: [] as string[] }));
      found.set(
        planId,
        concerned.map(({ item, reason, hangs }) => ({
          ...{ item, code: reason.code, why: tell(this.words.against, reason) },
          aloft: up.filter((each) => hangs.includes(each.hang)),
        })),
      );
    }
    return found;
  }

  /** Of a plan of an earlier shape, what its findings are about is looked up among everything that it holds. */
  private async findings({ planId, findings }: Omit<ShowInSight, 'changed' | 'barred' | 'barredActs'>): Promise<ShowInSight['findings']> {
    if (planId === null || findings.every((each) => 'fact' in each)) return findings;
    const { plan } = await this.plans.one(this.dataSource.manager, planId);
    return plan.findings.filter((each) => each.weight !== 'agrees');
  }

  /** Shows that are not over somewhere on earth, each with its last day and its zone. */
  private looked(): Promise<(Omit<ShowInSight, 'changed' | 'barred' | 'barredActs'> & { readonly to: string; readonly zone: string })[]> {
    return this.dataSource.query(shows, [addDays(today(this.clock), -1)]);
  }

  async notes(
    role: string | null,
    first?: number | null,
    after?: string | null,
  ): Promise<Connection<Note> & { totalCount: number; showCount: number; plannedCount: number }> {
    if (role !== null && !roles.some((each) => each === role))
      throw new BadInputError([{ field: 'role', value: role.slice(0, 80), wanted: `one of: ${roles.join(', ')}` }]);
    const size = pageSize(first);
    const found = (await this.looked()).filter((each) => each.to >= dayIn(this.clock, each.zone));
    const changed = await this.freshness.changed(found.flatMap((each) => each.planId ?? []));
    const released = found.flatMap((each) => (each.state === 'released' && each.planId !== null ? [each.planId] : []));
    const barred = await this.barred(released);
    const barredActs = await barredActsOfShows(this.dataSource.manager, found, this.words);
    const notes = attentionNotes(
      await Promise.all(
        found.map(async (each) => ({
          ...each,
          findings: saidOnce(await this.findings(each), this.words),
          barred: barred.get(each.planId ?? '') ?? [],
          barredActs: barredActs.get(`${each.tourId}/${each.showId}`) ?? [],
          changed: (changed.get(each.planId ?? '') ?? []).map((change) => tell(this.words.changes, change)),
        })),
      ),
    );
    const own = notes.filter((each) => role === null || each.role === role);
    const seen = readCursor(after);
    const start = seen === undefined ? 0 : own.findIndex((each) => each.key === seen) + 1;
    return {
      ...connectionOf(
        own.slice(start, start + size + 1),
        size,
        (note) => note.key,
        (note) => note,
      ),
      totalCount: own.length,
      showCount: found.length,
      plannedCount: found.filter((each) => each.planId !== null).length,
    };
  }
}
