import { Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { BadInputError, NotFoundError } from '../../../platform/faults/fault.js';
import { PackPlanRow } from './rows.js';
import { ticksOf } from './tick.repository.js';

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

  /** Which plan it is, without the plan; it must not have been superseded. */
  async headInForce(manager: EntityManager, planId: string): Promise<Pick<PackPlanRow, 'id' | 'tourId' | 'showId' | 'state'>> {
    const row = await manager
      .getRepository(PackPlanRow)
      .findOne({ where: { id: planId }, select: { id: true, tourId: true, showId: true, state: true, revision: true } });
    if (!row) throw new NotFoundError('This plan (a newer draft has taken its place: open the show again)');
    if (row.state === 'superseded')
      throw new BadInputError([
        { field: 'planId', value: planId, wanted: `the plan in force; revision ${row.revision} has been superseded, open the show again` },
      ]);
    return row;
  }

  /** Released plans and drafts of a tour, without the plans, in the order in which they are taken: released first. */
  async headsInForce(manager: EntityManager, tourId: string): Promise<Pick<PackPlanRow, 'id' | 'showId' | 'state'>[]> {
    return manager.getRepository(PackPlanRow).find({
      where: [
        { tourId, state: 'released' },
        { tourId, state: 'draft' },
      ],
      select: { id: true, showId: true, state: true },
      order: { state: 'DESC', showId: 'ASC' },
    });
  }

  /** The name of the show where its draft or its released plan flies this box; null where neither does. */
  async nameOfShowThatFlies(manager: EntityManager, tourId: string, showId: string, serial: string): Promise<string | null> {
    const [row] = await manager.query<{ name: string }[]>(
      `SELECT plan #>> '{show,name}' AS name FROM pack_plan WHERE tour_id = $1 AND show_id = $2 AND state IN ('released', 'draft')
         AND jsonb_path_exists(plan, '$.carts.loads[*].boxes[*] ? (@.serial == $serial)', jsonb_build_object('serial', $3::text)) LIMIT 1`,
      [tourId, showId, serial],
    );
    return row?.name ?? null;
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
