import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { type HangResult, type HardwareResult, type PackPlan, type TruckResultOne, wholePlan } from '#pack-plan';
import { NotFoundError } from '../../platform/graphql/fault.js';
import type { CartCheck } from './plan.types.js';
import { type WrittenTick, textOfTick } from './tick.repository.js';

type PartName = 'head' | 'findings' | 'carts' | 'picks' | 'hang' | 'hardware' | 'trucks' | 'truck' | 'due' | 'uses';

const part = `SELECT data FROM plan_part WHERE plan_id = $1 AND part = $2 AND ($3::text IS NULL OR key = $3) ORDER BY place`;
const keys = `SELECT key FROM plan_part WHERE plan_id = $1 AND part = $2 ORDER BY place`;
const counts = `SELECT (SELECT count(*)::int FROM jsonb_array_elements(data) each WHERE each->>'weight' = $2) AS count FROM plan_part WHERE plan_id = $1 AND part = 'findings'`;
const ticks = `SELECT kind, subject, place FROM tick WHERE plan_id = $1 ORDER BY ticked_at, kind, subject, place`;
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
    return inWhole({ findings: await this.one(planId, 'findings') }).findings;
  }

  async countOf(planId: string, weight: 'stop' | 'look'): Promise<number> {
    const [row]: { count: number }[] = await this.dataSource.query(counts, [planId, weight]);
    return row?.count ?? 0;
  }

  async carts(planId: string): Promise<PackPlan['carts']> {
    return inWhole({ carts: await this.one(planId, 'carts') }).carts;
  }

  async picks(planId: string): Promise<Omit<PackPlan['picks'], 'hangs'>> {
    const picks: object = await this.one(planId, 'picks');
    const { hangs: _hangs, ...rest } = inWhole({ picks: { ...picks, hangs: [] } as never }).picks;
    return rest;
  }

  hangs(planId: string): Promise<string[]> {
    return this.keysOf(planId, 'hang');
  }

  async hang(planId: string, hang: string): Promise<HangResult> {
    const found = await this.one<HangResult>(planId, 'hang', hang);
    return inWhole({ picks: { hangs: [found], loadRule: {} } as never }).picks.hangs[0]!;
  }

  async hardware(planId: string): Promise<HardwareResult> {
    return inWhole({ hardware: await this.one(planId, 'hardware') }).hardware;
  }

  async truckHead(planId: string): Promise<Omit<PackPlan['truck'], 'trucks'>> {
    return this.one(planId, 'trucks');
  }

  trucks(planId: string): Promise<string[]> {
    return this.keysOf(planId, 'truck');
  }

  async truck(planId: string, truck: string): Promise<TruckResultOne> {
    return this.one(planId, 'truck', truck);
  }

  async due(planId: string): Promise<PackPlan['due']> {
    return this.one(planId, 'due');
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
    if (!row) throw new NotFoundError(`The plan ${planId}`);
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

/** Earlier plans are read in one place, whole; a part is put into a plan that holds nothing else. */
const inWhole = (part: Partial<PackPlan>): PackPlan =>
  wholePlan({ findings: [], picks: { hangs: [], loadRule: {} }, hardware: { lines: [], chosen: [], caution: '' }, ...part } as never);
