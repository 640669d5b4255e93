import { type PackPlan, differenceBetween, fingerprintOf, makePackPlan } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { BadInputError } from '../../../platform/faults/fault.js';
import { floorsOf } from '../../../planning/solve/floors-of.js';
import { type MadePlan, writeOut } from '../../../planning/solve/made-plan.js';
import { type PlanOnFile, loadPlansInForce } from '../../../planning/snapshot/plan-snapshot.js';
import { planningTask } from '../../../planning/solve/planning-task.js';
import { type Queryable, rowsOf } from '../../../planning/snapshot/queryable.js';
import { loadTourFile } from '../../../planning/snapshot/tour-file.reader.js';
import type { PlanDifferenceView } from '../plan.types.js';

export interface SwapSubject {
  readonly tourId: string;
  readonly showId: string;
  readonly serial: string;
}

export interface SwapAnswer {
  readonly made: MadePlan;
  readonly difference: PlanDifferenceView;
  /** Other plans that counted on the box, in words. */
  readonly marked: readonly string[];
}

interface Inputs {
  readonly file: TourFile;
  readonly before: PlanOnFile;
  readonly marked: readonly string[];
}

/** A draft that leaves a failed box out and keeps every other where the plan has it; the box has been quarantined before. */
export default planningTask({
  load: async (db, { tourId, showId, serial }: SwapSubject) => {
    // A draft that an earlier swap made is what the crew works to: the next swap starts from it.
    const before = [...(await loadPlansInForce(db, tourId, showId))].reverse().find(({ plan }) => flies(plan, serial));
    if (!before) throw new BadInputError([{ field: 'serial', value: serial, wanted: 'a box of the plan of this show' }]);
    const inputs: Inputs = { file: await loadTourFile(db, tourId), before, marked: await othersWith(db, before, serial) };
    return { scope: { tourId, showId }, inputs };
  },
  dependsOn: ({ file, before }: Inputs, { showId }) => [fingerprintOf(file, showId), floorsOf(file), before.id],
  solve: ({ file, before, marked }, { showId, serial }, limits, words): SwapAnswer => {
    const plan = makePackPlan(file, showId, limits, { plan: before.plan, failed: new Set([serial]) }, words);
    const { sentences, boxes, hangsChanged } = differenceBetween(before.plan, plan, words);
    const difference = { sentences: [...sentences], boxes: [...boxes], hangsChanged: [...hangsChanged] };
    return { made: writeOut(plan, file), difference, marked };
  },
});

const flies = (plan: PackPlan, serial: string): boolean => plan.carts.loads.some((load) => load.boxes.some((box) => box.serial === serial));

async function othersWith(db: Queryable, { id, tourId, showId }: PlanOnFile, serial: string): Promise<readonly string[]> {
  // The draft of this show is about to be replaced.
  const rows = await rowsOf<{ show: string; tour: string; revision: string | null }>(
    db,
    `SELECT plan #>> '{show,name}' AS show, plan #>> '{tour,name}' AS tour, revision FROM pack_plan
     WHERE state IN ('released', 'draft') AND id <> $1 AND NOT (state = 'draft' AND tour_id = $2 AND show_id = $3)
       AND jsonb_path_exists(plan, '$.carts.loads[*].boxes[*] ? (@.serial == $serial)', jsonb_build_object('serial', $4::text))
     ORDER BY tour_id, show_id, state DESC`,
    [id, tourId, showId, serial],
  );
  return rows.map(({ show, tour, revision }) => `${show} (${tour}), ${revision ? `revision ${revision}` : 'draft'}`);
}
