import { standardGravityMps2 } from '#kernel';
import type { Show } from '#tour-file';
import type { BeamResult, PicksResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { compareRated } from '../rules/index.js';
import { greatestOf } from './greatest-pull.js';
import { structurePoints } from './structure-points.js';

/** Every truss or beam of the show with the sum of the worst of its points, as if all moved together, against what it may carry in all. */
export const beamSums = (inputs: PlanInputs, picks: PicksResult): readonly BeamResult[] =>
  (inputs.show.beams ?? []).map((beam) => sumOf(inputs, picks, beam));

function sumOf(inputs: PlanInputs, picks: PicksResult, beam: NonNullable<Show['beams']>[number]): BeamResult {
  const points = structurePoints(picks).filter((each) => each.beam === beam.name);
  const sum = (of: (point: (typeof points)[number]) => number) => points.reduce((total, each) => total + of(each), 0);
  const aside = greatestOf(points.map(({ horizontalN, directionDeg }) => ({ newtons: horizontalN, directionDeg })));
  const worstDynamicN = sum((each) => each.verticalDynamicN);
  const part = { code: 'beam', beam: beam.name } as const;
  return {
    name: beam.name,
    highSteelMm: beam.highSteelMm ?? null,
    lowSteelMm: beam.lowSteelMm ?? null,
    allowedBy: beam.allowedBy ?? null,
    points: points.map((each) => each.point),
    restN: sum((each) => each.restN),
    worstN: sum((each) => each.verticalN),
    worstDynamicN,
    asideN: aside.newtons,
    asideDynamicN: aside.newtons * picks.loadRule.dynamicFactor,
    asideDeg: aside.directionDeg,
    comparisons: [compareRated(inputs, part, worstDynamicN / standardGravityMps2, beam.allowed ?? null, [])],
  };
}
