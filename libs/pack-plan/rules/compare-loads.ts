import { groupDigits, standardGravityMps2 } from '#kernel';
import type { GridModel, Hang, Pick, RatedLoad } from '#tour-file';
import type { Comparison, Factor, LegResult } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { ratedKg } from './rated-load.js';
import { hoistUse, personsBelowFactors, sideLoadFactor } from './regime.js';

/** Everything between hang and point, compared with its rated load on file times the factors of the regime. */
export function comparePick(
  inputs: PlanInputs,
  grid: GridModel,
  hang: Hang,
  pick: Pick,
  loads: { readonly reactionN: number; readonly hookLoadKg: number; readonly pointLoadDynamicN: number; readonly sideDeg: number },
): Comparison[] {
  const hoist = modelOf(inputs.file.catalogue.hoists, pick.hoist);
  const use = hoistUse(inputs.loadRule, inputs.show, hoist, hang.secondary !== undefined);
  return [
    compareRated(`hoist ${hoist.model}`, loads.hookLoadKg, hoist.ratedLoad, use.factors),
    ...(use.sentence === null ? [] : [statement(`class of hoist ${hoist.model}`, use.verdict, use.sentence, use.factors)]),
    ...compareSteel(inputs, pick, loads.hookLoadKg, loads.sideDeg),
    compareRated(
      `grid ${grid.model} at hole ${pick.hole}`,
      loads.reactionN / standardGravityMps2,
      grid.ratedPick ?? null,
      metalFactors(inputs),
    ),
    ...(pick.structure
      ? [compareRated('structure above this point', loads.pointLoadDynamicN / standardGravityMps2, pick.structure, [])]
      : []),
  ];
}

type Steel = { readonly shackles: readonly string[]; readonly slings: readonly string[] };

/** Slings and shackles of one line, each model once, under the load of that line; `sideDeg` is how far its shackles are pulled aside. */
export function compareSteel(inputs: PlanInputs, steel: Steel, loadKg: number, sideDeg = 0, where = ''): Comparison[] {
  const { catalogue } = inputs.file;
  const { loadRule, show } = inputs;
  const slings = [...new Set(steel.slings)].map((each) => modelOf(catalogue.slings, each));
  const shackles = [...new Set(steel.shackles)].map((each) => modelOf(catalogue.shackles, each));
  const side = sideDeg > 1e-6 ? sideLoadFactor(loadRule, sideDeg) : undefined;
  return [
    ...slings.map((each) =>
      compareRated(`sling ${each.model}${where}`, loadKg, each.ratedLoad, personsBelowFactors(loadRule, show, each.material)),
    ),
    ...shackles.map((each) => {
      const factors = [...personsBelowFactors(loadRule, show, 'shackle'), ...(side ? [side] : [])];
      return side?.factor === 0
        ? statement(
            `shackle ${each.model}${where}`,
            'over',
            `shackle ${each.model}${where} is pulled aside by ${side.what.slice(13)}, which the regime does not permit.`,
            factors,
          )
        : compareRated(`shackle ${each.model}${where}`, loadKg, each.ratedLoad, factors);
    }),
    ...(sideDeg > 1e-6 && !side && shackles.length > 0
      ? [
          statement(
            `side load of the shackles${where}`,
            'no rule on file',
            `The shackles${where} are pulled aside by ${groupDigits(sideDeg, 1)}°, and the regime has no rule for side load. Ask the maker.`,
            [],
          ),
        ]
      : []),
  ];
}

/** Legs of a bridle against their steel and against the flattest angle that the regime allows. */
export function compareLegs(inputs: PlanInputs, steel: Steel, legs: readonly LegResult[]): Comparison[] {
  const worst = Math.max(...legs.map((leg) => leg.tensionN)) / standardGravityMps2;
  const flattest = Math.min(...legs.map((leg) => leg.fromHorizontalDeg));
  const rule = inputs.loadRule.legAngle;
  const at = `The flattest leg stands at ${groupDigits(flattest, 1)}° from the horizontal`;
  return [
    ...compareSteel(inputs, steel, worst, 0, ' of the bridle leg that carries most'),
    rule
      ? statement(
          'angle of the bridle legs',
          flattest >= rule.leastFromHorizontalDeg - 1e-9 ? 'within' : 'over',
          `${at}; the regime asks for ${rule.leastFromHorizontalDeg}° or more.`,
          [],
        )
      : statement('angle of the bridle legs', 'no rule on file', `${at}, and the regime has no rule for it.`, []),
  ];
}

/** Rear link and front pins of one joint against the rated values of its box model. */
export function compareJoint(
  box: JointOf,
  joint: { readonly rearLinkN: number; readonly frontPinN: number },
  factors: readonly Factor[] = [],
): Comparison[] {
  const of = (what: string, value: number, rated: number | undefined) =>
    compare(
      `${what} of ${box.model}`,
      Math.abs(value),
      rated === undefined ? null : factors.reduce((left, each) => left * each.factor, rated),
      'N',
      rated === undefined ? null : { value: rated, unit: 'N' },
      rated === undefined ? [] : factors,
    );
  return [of('rear link', joint.rearLinkN, box.ratedRearLinkN), of('front pin', joint.frontPinN, box.ratedFrontPinN)];
}

/** Links, pins and grids are metal in the load path: reduced while persons are below where the regime lists it. */
export const metalFactors = (inputs: PlanInputs): readonly Factor[] =>
  inputs.loadRule.workingCoefficients?.elements.some((each) => each.element === 'other metal')
    ? personsBelowFactors(inputs.loadRule, inputs.show, 'other metal')
    : [];

/** What a joint is compared with: a box model, or an adapter frame without rated values. */
type JointOf = { readonly model: string } & Partial<{
  readonly ratedRearLinkN: number | undefined;
  readonly ratedFrontPinN: number | undefined;
}>;

/** A load in kilograms against a rated load in its own unit. */
export const compareRated = (what: string, valueKg: number, rated: RatedLoad | null, factors: readonly Factor[]): Comparison =>
  compare(
    what,
    valueKg,
    rated === null ? null : factors.reduce((left, each) => left * each.factor, ratedKg(rated)),
    'kg',
    rated === null ? null : { value: rated.value, unit: rated.unit },
    factors,
  );

/** Something that a regime allows or not, without a figure that could be left. */
const statement = (what: string, verdict: Comparison['verdict'], sentence: string, factors: readonly Factor[]): Comparison => ({
  what,
  value: 0,
  unit: '',
  limit: null,
  verdict,
  sentence,
  rated: null,
  factors,
});

function compare(
  what: string,
  value: number,
  limit: number | null,
  unit: string,
  rated: Comparison['rated'],
  factors: readonly Factor[],
): Comparison {
  const shown = `${groupDigits(value)} ${unit}`;
  const base = { what, value, unit, limit, rated, factors };
  if (limit === null)
    return {
      ...base,
      verdict: 'no rated value on file',
      sentence: `No rated value on file for ${what}: ${shown} cannot be compared. Ask the maker.`,
    };
  if (value < 0)
    return {
      ...base,
      verdict: 'over',
      sentence: `${what} would be pushed with ${`${groupDigits(-value)} ${unit}`} and cannot push. Do not lift like this.`,
    };
  const allowed = `${groupDigits(limit)} ${unit}`;
  const reduced =
    factors.length === 0
      ? ''
      : ` (${rated!.value} ${rated!.unit} × ${factors.map((each) => `${Number(each.factor.toFixed(4))}, ${each.what}`).join(' × ')})`;
  return value <= limit
    ? {
        ...base,
        verdict: 'within',
        sentence: `${what}: ${shown} of ${allowed}${reduced}, ${Math.round((1 - value / limit) * 100)} % left.`,
      }
    : { ...base, verdict: 'over', sentence: `${what} would carry ${shown}, more than ${allowed}${reduced}. Do not lift like this.` };
}
