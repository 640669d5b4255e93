import { Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { canonicalJson } from '#kernel';
import { BadInputError, NotFoundError } from '../../platform/graphql/fault.js';
import { PackPlanRow } from './rows.js';
import { ticksOf } from './tick.repository.js';

export const SOLVER = Symbol('integer program solver');

/** Plans in force, for other features to read. */
@Injectable()
export class PlanReader {
  constructor(private readonly dataSource: DataSource) {}

  /** Released plans and drafts, released first. */
  async current(): Promise<PackPlanRow[]> {
    const rows = await this.dataSource
      .getRepository(PackPlanRow)
      .find({ where: [{ state: 'released' }, { state: 'draft' }], order: { madeAt: 'ASC' } });
    return rows.sort((a, b) => Number(a.state === 'draft') - Number(b.state === 'draft'));
  }

  /** The plan, which must not have been superseded. */
  async inForce(manager: EntityManager, planId: string): Promise<PackPlanRow> {
    const row = await this.one(manager, planId);
    if (row.state === 'superseded')
      throw new BadInputError([
        { field: 'planId', value: planId, wanted: `the plan in force; revision ${row.revision} has been superseded, open the show again` },
      ]);
    return row;
  }

  /** Refuses work on a released plan when a draft with other boxes in the carts is under way: it would be lost. */
  async refuseBehindDraft(manager: EntityManager, { state, tourId, showId, id, plan }: PackPlanRow): Promise<void> {
    if (state === 'draft') return;
    const draft = await manager.getRepository(PackPlanRow).findOneBy({ tourId, showId, state: 'draft' });
    if (draft && canonicalJson(draft.plan.carts.loads) !== canonicalJson(plan.carts.loads))
      throw new BadInputError([
        { field: 'planId', value: id, wanted: 'the draft of this show: its carts are no longer those of the revision' },
      ]);
  }

  /** One plan, whatever its state. */
  async one(manager: EntityManager, planId: string): Promise<PackPlanRow> {
    const row = await manager.getRepository(PackPlanRow).findOneBy({ id: planId });
    if (!row) throw new NotFoundError('This plan (a newer draft has taken its place: open the show again)');
    return row;
  }

  /** What has been ticked off on it, each as the text of its key. */
  async ticks(manager: EntityManager, planId: string): Promise<string[]> {
    return ticksOf(manager, planId);
  }
}
