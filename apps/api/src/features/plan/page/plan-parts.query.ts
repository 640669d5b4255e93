import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import {
  type HangResult,
  type HardwareResult,
  type PackPlan,
  type TruckResultOne,
  wholeCarts,
  wholeDue,
  wholeHang,
  wholeHardware,
  wholePicks,
  wholePlan,
  wholeTruck,
} from '#pack-plan';
import { NotFoundError } from '../../../platform/faults/fault.js';
import type { CartCheck } from '../plan.types.js';
import { type WrittenTick, textOfTick } from '../../../planning/snapshot/written-tick.js';

type PartName = 'head' | 'findings' | 'carts' | 'picks' | 'hang' | 'hardware' | 'trucks' | 'truck' | 'due' | 'uses';

const part = `SELECT data FROM plan_part WHERE plan_id = $1 AND part = $2 AND ($3::text IS NULL OR key = $3) ORDER BY place`;
const keys = `SELECT key FROM plan_part WHERE plan_id = $1 AND part = $2 ORDER BY place`;
const counts = `SELECT (SELECT count(*)::int FROM jsonb_array_elements(data) each WHERE each->>'weight' = $2) AS count FROM plan_part WHERE plan_id = $1 AND part = 'findings'`;
const ticks = `SELECT kind, subject, place FROM tick WHERE plan_id = $1 ORDER BY ticked_at, kind, subject, place`;
const remarks = `SELECT kind, subject, place, remark, ticked_by AS by FROM tick WHERE plan_id = $1 AND remark IS NOT NULL ORDER BY ticked_at, kind, subject, place`;
const checks = `SELECT load, checked_at AS "checkedAt", checked_by AS "checkedBy" FROM cart_check WHERE plan_id = $1 ORDER BY checked_at, load`;
const whole = `SELECT plan FROM pack_plan WHERE id = $1`;

/** What stands in a stored plan, each part read alone; parts of earlier plans come in the shape of new ones. */
@Injectable()
export class PlanPartsQuery {
  constructor(private readonly dataSource: DataSource) {}

  async head(planId: string): Promise<Pick<PackPlan, 'tour' | 'show'>> {
    return this.one(planId, 'head');
  }

  async findings(planId: string): Promise<PackPlan['findings']> {
    const kept = await this.one<PackPlan['findings']>(planId, 'findings');
    // What findings of earlier plans are about is looked up among everything that the plan holds.
    return kept.every((each) => 'fact' in each) ? kept : (await this.whole(planId)).findings;
  }

  async countOf(planId: string, weight: 'stop' | 'look'): Promise<number> {
    const [row]: { count: number }[] = await this.dataSource.query(counts, [planId, weight]);
    return row?.count ?? 0;
  }

  async carts(planId: string): Promise<PackPlan['carts']> {
    return wholeCarts(await this.one(planId, 'carts'));
  }

  async picks(planId: string): Promise<Omit<PackPlan['picks'], 'hangs'>> {
    const picks: object = await this.one(planId, 'picks');
    const { hangs: _hangs, ...rest } = wholePicks({ ...picks, hangs: [] } as never);
    return rest;
  }

  hangs(planId: string): Promise<string[]> {
    return this.keysOf(planId, 'hang');
  }

  async hang(planId: string, hang: string): Promise<HangResult> {
    return wholeHang(await this.one(planId, 'hang', hang));
  }

  async hardware(planId: string): Promise<HardwareResult> {
    return wholeHardware(await this.one(planId, 'hardware'));
  }

  async truckHead(planId: string): Promise<Omit<PackPlan['truck'], 'trucks'>> {
    const { trucks: _trucks, ...rest } = wholeTruck({ ...(await this.one<object>(planId, 'trucks')), trucks: [] } as never);
    return rest;
  }

  trucks(planId: string): Promise<string[]> {
    return this.keysOf(planId, 'truck');
  }

  async truck(planId: string, truck: string): Promise<TruckResultOne> {
    const found: TruckResultOne = await this.one(planId, 'truck', truck);
    return wholeTruck({ trucks: [found], leftOver: [] } as never).trucks[0]!;
  }

  async due(planId: string): Promise<PackPlan['due']> {
    return wholeDue(await this.one(planId, 'due'));
  }

  /** What was said with a tick. */
  async tickRemarks(planId: string): Promise<{ what: string; remark: string; by: string }[]> {
    const rows: (WrittenTick & { remark: string; by: string })[] = await this.dataSource.query(remarks, [planId]);
    return rows.map(({ remark, by, ...tick }) => ({ what: textOfTick(tick), remark, by }));
  }

  async ticks(planId: string): Promise<string[]> {
    const rows: WrittenTick[] = await this.dataSource.query(ticks, [planId]);
    return rows.map(textOfTick);
  }

  async cartChecks(planId: string): Promise<CartCheck[]> {
    const rows: { load: string; checkedAt: Date; checkedBy: string }[] = await this.dataSource.query(checks, [planId]);
    return rows.map((row) => ({ ...row, checkedAt: row.checkedAt.toISOString() }));
  }

  /** All of it, for export and for printing all sheets. */
  async whole(planId: string): Promise<PackPlan> {
    const [row]: { plan: never }[] = await this.dataSource.query(whole, [planId]);
    if (!row) throw new NotFoundError('This plan (a newer draft has taken its place: open the show again)');
    return wholePlan(row.plan);
  }

  private async one<T>(planId: string, name: PartName, key: string | null = null): Promise<T> {
    const [row]: { data: T }[] = await this.dataSource.query(part, [planId, name, key]);
    if (!row) throw new NotFoundError(key === null ? `This part of the plan (${name})` : `${key} in this plan`);
    return row.data;
  }

  private async keysOf(planId: string, name: PartName): Promise<string[]> {
    const rows: { key: string }[] = await this.dataSource.query(keys, [planId, name]);
    return rows.map((row) => row.key);
  }
}
