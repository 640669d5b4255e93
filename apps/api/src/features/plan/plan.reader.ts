import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { PackPlanRow } from './rows.js';

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
}
