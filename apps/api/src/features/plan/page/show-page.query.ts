import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { NotFoundError } from '../../../platform/faults/fault.js';
import type { PlanHead, ShowPage } from '../plan.types.js';

const show = `SELECT tour.name AS "tourName", show->>'name' AS name,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('id', id, 'state', state, 'revision', revision, 'madeAt', made_at, 'madeBy', made_by,
     'releasedAt', released_at, 'releasedBy', released_by, 'releasedDespite', released_despite) ORDER BY made_at), '[]')
   FROM pack_plan WHERE tour_id = tour.id AND show_id = $2) AS plans
FROM tour, jsonb_array_elements(tour.data->'shows') show WHERE tour.id = $1 AND show->>'id' = $2`;

// What changes while people work: another plan in force, a tick, a cart read, a list saved. A few bytes for who asks again and again.
const version = `SELECT concat_ws('.', tour.version,
  (SELECT md5(string_agg(id::text || state, ' ' ORDER BY id)) FROM pack_plan WHERE tour_id = tour.id AND show_id = $2 AND state <> 'superseded'),
  (SELECT count(*) || '-' || coalesce(extract(epoch FROM max(ticked_at))::text, '') FROM tick WHERE plan_id IN (SELECT id FROM pack_plan WHERE tour_id = tour.id AND show_id = $2)),
  (SELECT count(*) || '-' || coalesce(extract(epoch FROM max(checked_at))::text, '') FROM cart_check WHERE plan_id IN (SELECT id FROM pack_plan WHERE tour_id = tour.id AND show_id = $2))
) AS version FROM tour WHERE tour.id = $1`;

const heads = `SELECT DISTINCT ON (plan.show_id) plan.show_id AS "showId", plan.state, plan.revision,
  (SELECT count(*)::int FROM jsonb_array_elements(findings.data) each WHERE each->>'weight' = 'stop') AS stops,
  (SELECT count(*)::int FROM jsonb_array_elements(findings.data) each WHERE each->>'weight' = 'look') AS looks
FROM pack_plan plan JOIN plan_part findings ON findings.plan_id = plan.id AND findings.part = 'findings'
WHERE plan.tour_id = $1 AND plan.state <> 'superseded' ORDER BY plan.show_id, (plan.state = 'released') DESC`;

const plan = `SELECT id, state, revision, made_at AS "madeAt", made_by AS "madeBy", released_at AS "releasedAt", released_by AS "releasedBy",
  released_despite AS "releasedDespite" FROM pack_plan WHERE id = $1`;

/** The head of the show page; what stands in its plans is asked for part by part (`PlanPartsQuery`). */
@Injectable()
export class ShowPageQuery {
  constructor(private readonly dataSource: DataSource) {}

  async page(tourId: string, showId: string): Promise<ShowPage> {
    const [found]: { name: string; tourName: string; plans: PlanHead[] }[] = await this.dataSource.query(show, [tourId, showId]);
    if (!found) throw new NotFoundError(`The show ${showId}`);
    const plans = found.plans.map(headOf);
    return {
      tourId,
      showId,
      name: found.name,
      tourName: found.tourName,
      released: plans.find((each) => each.state === 'released') ?? null,
      draft: plans.find((each) => each.state === 'draft') ?? null,
      revisions: plans.filter((each) => each.state !== 'draft'),
    };
  }

  /** Another text whenever what is seen of a show while people work at it is another. */
  async version(tourId: string, showId: string): Promise<string> {
    const [found]: { version: string }[] = await this.dataSource.query(version, [tourId, showId]);
    if (!found) throw new NotFoundError(`The tour ${tourId}`);
    return found.version;
  }

  /** The plan in force of every show of a tour: the released one, else the draft. */
  heads(tourId: string): Promise<{ showId: string; state: string; revision: string | null; stops: number; looks: number }[]> {
    return this.dataSource.query(heads, [tourId]);
  }

  async plan(id: string): Promise<PlanHead> {
    const [found]: PlanHead[] = await this.dataSource.query(plan, [id]);
    if (!found) throw new NotFoundError('This plan (a newer draft has taken its place: open the show again)');
    return headOf(found);
  }
}

const headOf = (row: PlanHead): PlanHead => ({
  ...row,
  madeAt: new Date(row.madeAt).toISOString(),
  releasedAt: row.releasedAt === null ? null : new Date(row.releasedAt).toISOString(),
});
