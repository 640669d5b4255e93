import { randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import { capSeconds, makePackPlan } from '#pack-plan';
import { loadIntegerProgramSolver } from '#runtime';
import { loadTourFile } from '../../../api/src/planning/snapshot/tour-file.reader.js';

/** A draft of the first show of the demo tour; gives its id. */
export async function makeDemoPlan(dataSource: DataSource): Promise<string> {
  const [found]: { tourId: string; showId: string }[] = await dataSource.query(
    `SELECT id AS "tourId", data->'shows'->0->>'id' AS "showId" FROM tour ORDER BY prep_from LIMIT 1`,
  );
  const { tourId, showId } = found!;
  const limits = { now: () => performance.now(), integerProgram: await loadIntegerProgramSolver(), timeLimitSeconds: capSeconds };
  const plan = makePackPlan(await loadTourFile(dataSource, tourId), showId, limits);
  const id = randomUUID();
  await dataSource.query(
    `INSERT INTO pack_plan (id, tour_id, show_id, state, made_at, made_by, plan) VALUES ($1, $2, $3, 'draft', now(), 'bench', $4)`,
    [id, tourId, showId, JSON.stringify(plan)],
  );
  return id;
}
