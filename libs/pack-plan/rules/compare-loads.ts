import { canonicalJson, standardGravityMps2 } from '#kernel';
import { type BridleSetting, type GridModel, type Hang, type Pick, type RatedLoad, legSteel } from '#tour-file';
import type { ComparedPart, ComparisonCause, StageFact, SteelLine } from '#trade';
import type { Comparison, Factor, LegResult } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { compareForce, compareRated, factorFacts, toldAt, toldComparison } from './comparison.js';
import { hoistUse } from './hoist-use.js';
import { onePickSlackFactor, personsBelowFactors, sideLoadFactor } from './regime.js';
import { ruleSubject } from './rule-subject.js';

/** Everything between hang and point, compared with its rated load on file times the factors of the regime. */
export function comparePick(
  inputs: PlanInputs,
  grid: GridModel,
  hang: Hang,
  pick: Pick,
  rest: { readonly hookLoadKg: number },
  worst: Moment & { readonly reactionN: number; readonly inclined?: readonly Moment[] },
): Comparison[] {
  const at = (comparison: Comparison) => toldOf(inputs, worst, comparison);
  const hoist = modelOf(inputs.file.catalogue.hoists, pick.hoist);
  const { factors, code, use, field, useCase } = hoistUse(inputs.loadRule, inputs.show, hoist, hang.secondary !== undefined, inputs.words);
  const atGrid = { code: 'grid', model: grid.model, hole: pick.hole } as const;
  return [
    compareRated(inputs, { code: 'hoist', model: hoist.model }, rest.hookLoadKg, hoist.ratedLoad, factors),
    ...(code === null ? [] : [stated(inputs, code, { code: 'hoist-class', model: hoist.model }, field, factors, 0, null, use)]),
    ...(useCase === null
      ? []
      : [stated(inputs, useCase.code, { code: 'use-case', model: hoist.model }, useCase.field, factors, 0, null, use)]),
    ...tightest([worst, ...(worst.inclined ?? [])].map((each) => steelAt(inputs, pick, each))),
    at(compareRated(inputs, atGrid, worst.reactionN / standardGravityMps2, grid.ratedPick ?? null, metalFactors(inputs))),
  ];
}

/** Every part of a line that carries the whole hang because the other pick is slack, where the regime asks for it. */
export function compareAlone(
  inputs: PlanInputs,
  grid: GridModel,
  pick: Pick,
  alone: { readonly hookLoadKg: number; readonly massKg: number; readonly pointLoadDynamicN: number },
): readonly Comparison[] {
  const factor = onePickSlackFactor(inputs.loadRule, inputs.words);
  if (factor === null) return [];
  const { hoists, slings, shackles } = inputs.file.catalogue;
  const of = (part: ComparedPart, loadKg: number, rated: RatedLoad | null, factors = [factor]) =>
    toldAt(inputs, compareRated(inputs, part, loadKg, rated, factors), { stage: { code: 'other-slack' } });
  const each = <K extends 'sling' | 'shackle'>(
    code: K,
    names: readonly string[],
    models: readonly { model: string; ratedLoad: RatedLoad }[],
  ) => [...new Set(names)].map((model) => of({ code, model, line: 'pick' }, alone.hookLoadKg, modelOf(models, model).ratedLoad));
  const hoist = modelOf(hoists, pick.hoist);
  return [
    of({ code: 'hoist', model: hoist.model }, alone.hookLoadKg, hoist.ratedLoad),
    ...each('sling', pick.slings, slings),
    ...each('shackle', pick.shackles, shackles),
    of({ code: 'grid', model: grid.model, hole: pick.hole }, alone.massKg, grid.ratedPick ?? null),
    ...(pick.structure ? [of({ code: 'structure' }, alone.pointLoadDynamicN / standardGravityMps2, pick.structure, [])] : []),
  ];
}

/** What hangs at a hook at one moment, and how far its chain pulls the shackles aside. */
interface Moment {
  readonly hookLoadKg: number;
  readonly sideDeg: number;
  readonly at: StageFact | null;
}

const toldOf = (inputs: PlanInputs, { at }: Moment, comparison: Comparison): Comparison =>
  at && at.code !== 'at-trim' ? toldAt(inputs, comparison, { stage: at }) : comparison;

const steelAt = (inputs: PlanInputs, pick: Pick, moment: Moment): readonly Comparison[] =>
  compareSteel(inputs, pick, moment.hookLoadKg, moment.sideDeg).map((each) => toldOf(inputs, moment, each));

/** Of the same part at several moments the one that comes nearest to its limit, or goes furthest beyond. */
function tightest(moments: readonly (readonly Comparison[])[]): readonly Comparison[] {
  const found = new Map<string, Comparison>();
  for (const each of moments.flat()) {
    const key = canonicalJson(each.fact?.part ?? null);
    const before = found.get(key);
    if (!before || useOf(each) > useOf(before)) found.set(key, each);
  }
  return [...found.values()];
}

const useOf = ({ value, limit, verdict }: Comparison): number => (limit === null ? (verdict === 'over' ? Infinity : 0) : value / limit);

type Steel = { readonly shackles: readonly string[]; readonly slings: readonly string[] };

/** Slings and shackles of one line, each model once, under the load of that line; `sideDeg` is how far its shackles are pulled aside. */
export function compareSteel(inputs: PlanInputs, steel: Steel, loadKg: number, sideDeg = 0, line: SteelLine = 'pick'): Comparison[] {
  const { catalogue } = inputs.file;
  const { loadRule, show, words } = inputs;
  const shackles = [...new Set(steel.shackles)].map((each) => modelOf(catalogue.shackles, each));
  const side = sideDeg > 1e-6 ? sideLoadFactor(loadRule, sideDeg, words) : undefined;
  const isUnruled = sideDeg > 1e-6 && !side && shackles.length > 0;
  return [
    ...[...new Set(steel.slings)]
      .map((each) => modelOf(catalogue.slings, each))
      .map(({ model, ratedLoad, material }) =>
        compareRated(inputs, { code: 'sling', model, line }, loadKg, ratedLoad, personsBelowFactors(loadRule, show, material, words)),
      ),
    ...shackles.map(({ model, ratedLoad }) => {
      const factors = [...personsBelowFactors(loadRule, show, 'shackle', words), ...(side ? [side] : [])];
      const part = { code: 'shackle', model, line } as const;
      return side?.factor === 0
        ? stated(inputs, 'side-load-forbidden', part, side.fact!.field, factors, sideDeg)
        : compareRated(inputs, part, loadKg, ratedLoad, factors);
    }),
    ...(isUnruled ? [stated(inputs, 'side-load-without-rule', { code: 'shackle-side-load', line }, 'sideLoad', [], sideDeg)] : []),
  ];
}

/** Legs of a bridle against their steel and against the flattest angle that the regime allows. */
export function compareLegs(inputs: PlanInputs, bridle: BridleSetting, legs: readonly LegResult[]): Comparison[] {
  const flattest = Math.min(...legs.map((leg) => leg.fromHorizontalDeg));
  const { loadRule } = inputs;
  const least = loadRule.legAngle?.leastFromHorizontalDeg ?? null;
  const code = least === null ? 'legs-without-rule' : flattest >= least - 1e-9 ? 'legs-steep-enough' : 'legs-too-flat';
  return [
    ...steelOfLegs(inputs, bridle, legs),
    stated(inputs, code, { code: 'leg-angle' }, 'legAngle.leastFromHorizontalDeg', [], flattest, least),
  ];
}

/** Each model under the leg that carries most of those that have it. */
function steelOfLegs(inputs: PlanInputs, bridle: BridleSetting, legs: readonly LegResult[]): Comparison[] {
  const steel = legSteel(bridle);
  const most = (has: (each: Steel) => boolean) =>
    Math.max(...legs.filter((_, index) => has(steel[index]!)).map((leg) => leg.tensionN)) / standardGravityMps2;
  const all = (of: (each: Steel) => readonly string[]) => [...new Set(steel.flatMap(of))];
  return [
    ...all((each) => each.slings).flatMap((model) => {
      const load = most((each) => each.slings.includes(model));
      return compareSteel(inputs, { slings: [model], shackles: [] }, load, 0, 'bridle leg');
    }),
    ...all((each) => each.shackles).flatMap((model) => {
      const load = most((each) => each.shackles.includes(model));
      return compareSteel(inputs, { slings: [], shackles: [model] }, load, 0, 'bridle leg');
    }),
  ];
}

/** Rear link and front pins of one joint against the rated values of its box model. */
export function compareJoint(
  inputs: PlanInputs,
  box: JointOf,
  joint: { readonly rearLinkN: number; readonly frontPinN: number },
  factors: readonly Factor[] = [],
): Comparison[] {
  const { model } = box;
  return [
    compareForce(inputs, { code: 'rear-link', model }, Math.abs(joint.rearLinkN), box.ratedRearLinkN, factors),
    compareForce(inputs, { code: 'front-pin', model }, Math.abs(joint.frontPinN), box.ratedFrontPinN, factors),
  ];
}

/** Links, pins and grids are metal in the load path: reduced while persons are below where the regime lists it. */
export const metalFactors = (inputs: PlanInputs): readonly Factor[] =>
  inputs.loadRule.workingCoefficients?.elements.some((each) => each.element === 'other metal')
    ? personsBelowFactors(inputs.loadRule, inputs.show, 'other metal', inputs.words)
    : [];

/** What a joint is compared with: a box model, or an adapter frame without rated values. */
type JointOf = { readonly model: string } & Partial<{
  readonly ratedRearLinkN: number | undefined;
  readonly ratedFrontPinN: number | undefined;
}>;

/** Something that a regime allows or not, without a load that could be left. */
const stated = (
  inputs: PlanInputs,
  code: ComparisonCause,
  part: ComparedPart,
  field: string | null,
  factors: readonly Factor[],
  value = 0,
  limit: number | null = null,
  use: ReturnType<typeof hoistUse>['use'] | null = null,
): Comparison => {
  const facts = factorFacts(inputs.loadRule, factors);
  const rule = ruleSubject(inputs.loadRule, field);
  return toldComparison(
    inputs,
    { code, part, value, unit: 'deg', limit, rated: null, factors: facts, rule, ...(use ? { use } : {}) },
    factors,
  );
};
