import { standardGravityMps2 } from '#kernel';
import type { Pick, RatedLoad } from '#tour-file';
import type { Comparison, HangResult, PickResult, PicksResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { compareRated, ratedKg, toldAt } from '../rules/index.js';
import { beamSums } from './beam-sums.js';
import { type StructurePoint, structurePoints, worstOf } from './structure-points.js';

/**
 * Every point of the structure against the sum of the worst that pulls at it, with the dynamic factor: picks that share a point are taken as moving
 * together, and the least that anybody allows there counts. Legs of a bridle and the anchor of a pull-back where something is allowed of them alone.
 */
export function withStructure(inputs: PlanInputs, picks: PicksResult): PicksResult {
  const points = new Map(structurePoints(picks).map((each) => [each.point, each]));
  return {
    ...picks,
    ...(picks.site ? { site: { ...picks.site, beams: beamSums(inputs, picks) } } : {}),
    hangs: picks.hangs.map((hang) => ({
      ...hang,
      picks: hang.picks.map((pick) => ({
        ...pick,
        ...aloneShared(inputs, picks, hang, pick),
        comparisons: [...pick.comparisons, ...structureAt(inputs, picks, pick, points), ...legAnchors(inputs, hang, pick, points)],
      })),
      pullBack: hang.pullBack && {
        ...hang.pullBack,
        comparisons: [...hang.pullBack.comparisons, ...anchorAt(inputs, hang, picks.loadRule.dynamicFactor)],
      },
    })),
  };
}

const settingOf = (inputs: PlanInputs, hang: HangResult, hole: string): Pick =>
  inputs.hangs.find((each) => each.id === hang.hang)!.picks.find((each) => each.hole === hole)!;

const kilograms = (newtons: number): number => newtons / standardGravityMps2;

/** What a whole pick, or all that share its point, pass on; of a bridle its legs together. */
function structureAt(
  inputs: PlanInputs,
  { hangs }: PicksResult,
  pick: PickResult,
  points: ReadonlyMap<string, StructurePoint>,
): readonly Comparison[] {
  const sharing = hangs.flatMap((hang) => hang.picks.filter((each) => each.point === pick.point).map((each) => ({ hang, pick: each })));
  const allowed = sharing.flatMap((each): RatedLoad[] => {
    const { structure } = settingOf(inputs, each.hang, each.pick.hole);
    return structure ? [structure] : [];
  });
  if (allowed.length === 0) return [];
  const least = allowed.reduce((a, b) => (ratedKg(b) < ratedKg(a) ? b : a));
  const names = sharing.flatMap((each) => namesOf(each.pick));
  const sumN = [...new Set(names)].reduce((sum, name) => sum + points.get(name)!.verticalDynamicN, 0);
  const part = sharing.length > 1 ? ({ code: 'structure', point: pick.point } as const) : ({ code: 'structure' } as const);
  const comparison = compareRated(inputs, part, kilograms(sumN), least, []);
  const at = sharing.length === 1 ? pick.worst?.fact : undefined;
  return [at && at.code !== 'at-trim' ? toldAt(inputs, comparison, { stage: at }) : comparison];
}

/** A shared point while this pick carries its whole hang, the other slack, and the others that share it carry their worst; where the regime asks for it. */
function aloneShared(inputs: PlanInputs, { hangs, loadRule }: PicksResult, hang: HangResult, pick: PickResult): Partial<PickResult> {
  const sharing = hangs.flatMap((each) => each.picks.filter(({ point }) => point === pick.point).map((own) => ({ hang: each, pick: own })));
  if (!pick.alone?.comparisons || sharing.length < 2) return {};
  const allowed = sharing.flatMap((each) => settingOf(inputs, each.hang, each.pick.hole).structure ?? []);
  if (allowed.length === 0) return {};
  const least = allowed.reduce((a, b) => (ratedKg(b) < ratedKg(a) ? b : a));
  // The other pick of the same hang hangs slack.
  const others = sharing.filter((each) => each.hang !== hang).reduce((sum, each) => sum + worstOf(each.pick), 0);
  const loadKg = kilograms((pick.alone.pointLoadN + others) * loadRule.dynamicFactor);
  const compared = compareRated(inputs, { code: 'structure', point: pick.point }, loadKg, least, []);
  const rest = pick.alone.comparisons.filter((each) => each.fact?.part.code !== 'structure');
  return { alone: { ...pick.alone, comparisons: [...rest, toldAt(inputs, compared, { stage: { code: 'other-slack' } })] } };
}

/** The points that a pick pulls at, as they are called. */
const namesOf = ({ point, bridle }: PickResult): readonly string[] =>
  bridle && bridle.legs.length > 0 ? bridle.legs.map((_, index) => `${point}, leg ${index + 1}`) : [point];

function legAnchors(
  inputs: PlanInputs,
  hang: HangResult,
  pick: PickResult,
  points: ReadonlyMap<string, StructurePoint>,
): readonly Comparison[] {
  const { bridle } = settingOf(inputs, hang, pick.hole);
  return (bridle?.legs ?? []).flatMap(({ structure }, index) => {
    const point = points.get(`${pick.point}, leg ${index + 1}`);
    if (!structure || !point) return [];
    const comparison = compareRated(inputs, { code: 'leg-anchor', leg: index + 1 }, kilograms(point.verticalDynamicN), structure, []);
    const at = pick.worst?.fact;
    return [at && at.code !== 'at-trim' ? toldAt(inputs, comparison, { stage: at }) : comparison];
  });
}

/** An anchor is held against its whole pull, whichever way it goes. */
function anchorAt(inputs: PlanInputs, hang: HangResult, dynamicFactor: number): readonly Comparison[] {
  const structure = inputs.hangs.find((each) => each.id === hang.hang)!.pullBack?.structure;
  const tensionN = hang.pullBack?.figures?.tensionN;
  if (!structure || tensionN === undefined) return [];
  return [compareRated(inputs, { code: 'anchor' }, kilograms(tensionN * dynamicFactor), structure, [])];
}
