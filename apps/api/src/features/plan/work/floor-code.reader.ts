import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { type HouseAnswer, textOfCode, whyNotUsable } from '#pack-plan';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';
import { PlanReader } from '../stored/plan.reader.js';

/** Nothing on file is called by a longer name. */
const longestCode = 200;

/** What a code is that was read on the floor, as far as a show is concerned with it. */
@Injectable()
export class FloorCodeReader {
  constructor(
    private readonly dataSource: DataSource,
    private readonly plans: PlanReader,
  ) {}

  /** As it was read, or in capitals; null where nothing on file is called so. */
  async codeOf(planId: string, code: string): Promise<HouseAnswer | null> {
    const { manager } = this.dataSource;
    const { tourId, showId } = await this.plans.headInForce(manager, planId);
    const text = textOfCode(code).slice(0, longestCode);
    const [found]: { id: string; kind: string; model: string; count: number | null }[] = await manager.query(
      'SELECT id, kind, model, count FROM item WHERE id = ANY($1) ORDER BY id = $2 DESC LIMIT 1',
      [[text, text.toUpperCase()], text],
    );
    if (!found) return null;
    const file = await loadTourFile(manager, tourId, [found.id]);
    const hangs = file.tour.shows.find((each) => each.id === showId)?.hangs ?? [];
    return {
      ...found,
      whyNot: whyNotUsable(file, showId, found.id),
      wantedSerials: hangs.flatMap((hang) => hang.boxes.flatMap((box) => box.serial ?? [])),
    };
  }
}
