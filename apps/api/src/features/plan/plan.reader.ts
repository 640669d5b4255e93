import { Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { NotFoundError } from '../../platform/graphql/fault.js';
import { PackPlanRow, TickRow } from './rows.js';

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

  /** One plan, whatever its state. */
  async one(manager: EntityManager, planId: string): Promise<PackPlanRow> {
    const row = await manager.getRepository(PackPlanRow).findOneBy({ id: planId });
    if (!row) throw new NotFoundError(`The plan ${planId}`);
    return row;
  }

  /** What has been ticked off on it. */
  async ticks(manager: EntityManager, planId: string): Promise<string[]> {
    return (await manager.getRepository(TickRow).find({ where: { planId } })).map((each) => each.what);
  }
}
