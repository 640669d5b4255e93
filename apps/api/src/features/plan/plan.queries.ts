import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { type PlanDifference, changedInputs, differenceBetween } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { NotFoundError } from '../../platform/graphql/fault.js';
import { TourFileReader } from '../../planning/tour-file.reader.js';
import type { PlanDifferenceView, PlanHead, PlanView, ShowPage } from './plan.types.js';
import { CartCheckRow, PackPlanRow, TickRow } from './rows.js';

/** Read models of the show page; staleness is judged at every look. */
@Injectable()
export class PlanQueries {
  constructor(
    private readonly dataSource: DataSource,
    private readonly reader: TourFileReader,
  ) {}

  async showPage(tourId: string, showId: string): Promise<ShowPage> {
    const file = await this.reader.load(this.dataSource.manager, tourId);
    const show = file.tour.shows.find((each) => each.id === showId);
    if (!show) throw new NotFoundError(`The show ${showId}`);
    const rows = await this.dataSource.getRepository(PackPlanRow).find({ where: { tourId, showId }, order: { madeAt: 'ASC' } });
    const view = async (row: PackPlanRow | undefined) => (row ? this.view(row, file) : null);
    return {
      tourId,
      showId,
      name: show.name,
      tourName: file.tour.name,
      released: await view(rows.find((row) => row.state === 'released')),
      draft: await view(rows.find((row) => row.state === 'draft')),
      revisions: rows.filter((row) => row.state !== 'draft').map(headOf),
    };
  }

  async plan(id: string): Promise<PlanView> {
    const row = await this.row(id);
    return this.view(row, await this.reader.load(this.dataSource.manager, row.tourId));
  }

  async difference(fromId: string, toId: string): Promise<PlanDifferenceView> {
    const [from, to] = await Promise.all([this.row(fromId), this.row(toId)]);
    return differenceViewOf(differenceBetween(from.plan, to.plan));
  }

  /** Newest plan of every show of a tour: the released one, else the draft. */
  async heads(tourId: string): Promise<{ showId: string; state: string; revision: string | null; stops: number; looks: number }[]> {
    const rows = await this.dataSource.getRepository(PackPlanRow).find({
      where: [
        { tourId, state: 'released' },
        { tourId, state: 'draft' },
      ],
    });
    const best = new Map<string, PackPlanRow>();
    for (const row of rows) if (!best.has(row.showId) || row.state === 'released') best.set(row.showId, row);
    return [...best.values()].map(({ showId, state, revision, plan }) => ({
      showId,
      state,
      revision,
      stops: plan.findings.filter((each) => each.weight === 'stop').length,
      looks: plan.findings.filter((each) => each.weight === 'look').length,
    }));
  }

  private async row(id: string): Promise<PackPlanRow> {
    const row = await this.dataSource.getRepository(PackPlanRow).findOneBy({ id });
    if (!row) throw new NotFoundError(`The plan ${id}`);
    return row;
  }

  private async view(row: PackPlanRow, file: TourFile): Promise<PlanView> {
    const [checks, ticks] = await Promise.all([
      this.dataSource.getRepository(CartCheckRow).find({ where: { planId: row.id } }),
      this.dataSource.getRepository(TickRow).find({ where: { planId: row.id } }),
    ]);
    return {
      ...headOf(row),
      changed: row.state === 'superseded' ? [] : [...changedInputs(row.plan, file)],
      plan: row.plan,
      cartChecks: checks.map(({ load, checkedAt, checkedBy }) => ({ load, checkedAt: checkedAt.toISOString(), checkedBy })),
      ticks: ticks.map((each) => each.what),
    };
  }
}

export const differenceViewOf = ({ sentences, boxes, hangsChanged }: PlanDifference): PlanDifferenceView => ({
  sentences: [...sentences],
  boxes: [...boxes],
  hangsChanged: [...hangsChanged],
});

function headOf(row: PackPlanRow): PlanHead {
  return {
    id: row.id,
    state: row.state,
    revision: row.revision,
    madeAt: row.madeAt.toISOString(),
    madeBy: row.madeBy,
    releasedAt: row.releasedAt?.toISOString() ?? null,
    releasedBy: row.releasedBy,
    releasedDespite: row.releasedDespite,
  };
}
