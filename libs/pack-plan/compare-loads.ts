import { groupDigits, standardGravityMps2 } from '#kernel';
import type { BoxModel, GridModel, Pick } from '#tour-file';
import type { Comparison } from './plan.js';
import { type PlanInputs, modelOf } from './plan-inputs.js';
import { ratedKg } from './rated-load.js';

/** Everything between hang and point, compared with its rated load on file, reduced while persons can be below. */
export function comparePick(
  inputs: PlanInputs,
  grid: GridModel,
  pick: Pick,
  loads: { readonly reactionN: number; readonly hookLoadKg: number },
): Comparison[] {
  const { catalogue } = inputs.file;
  const share = inputs.show.personsBelow ? inputs.loadRule.usableShareWithPersonsBelow : 1;
  const reactionKg = loads.reactionN / standardGravityMps2;
  const hoist = modelOf(catalogue.hoists, pick.hoist);
  const shackles = [...new Set(pick.shackles)].map((each) => modelOf(catalogue.shackles, each));
  const slings = [...new Set(pick.slings)].map((each) => modelOf(catalogue.slings, each));
  return [
    compare(`hoist ${hoist.model}`, loads.hookLoadKg, ratedKg(hoist.ratedLoad) * share, 'kg', share),
    ...slings.map((each) => compare(`sling ${each.model}`, loads.hookLoadKg, ratedKg(each.ratedLoad) * share, 'kg', share)),
    ...shackles.map((each) => compare(`shackle ${each.model}`, loads.hookLoadKg, ratedKg(each.ratedLoad) * share, 'kg', share)),
    compare(`grid ${grid.model} at hole ${pick.hole}`, reactionKg, grid.ratedPick ? ratedKg(grid.ratedPick) : null, 'kg', 1),
  ];
}

/** Rear link and front pins of one joint against the rated values of its box model. */
export function compareJoint(box: BoxModel, joint: { readonly rearLinkN: number; readonly frontPinN: number }): Comparison[] {
  return [
    compare(`rear link of ${box.model}`, Math.abs(joint.rearLinkN), box.ratedRearLinkN ?? null, 'N', 1),
    compare(`front pin of ${box.model}`, Math.abs(joint.frontPinN), box.ratedFrontPinN ?? null, 'N', 1),
  ];
}

function compare(what: string, value: number, limit: number | null, unit: string, share: number): Comparison {
  const shown = `${groupDigits(value)} ${unit}`;
  if (limit === null)
    return {
      what,
      value,
      unit,
      limit,
      verdict: 'no rated value on file',
      sentence: `No rated value on file for ${what}: ${shown} cannot be compared. Ask the maker.`,
    };
  if (value < 0)
    return {
      what,
      value,
      unit,
      limit,
      verdict: 'over',
      sentence: `${what} would be pushed with ${shown.replace('-', '')} and cannot push. Do not lift like this.`,
    };
  const allowed = `${groupDigits(limit)} ${unit}`;
  const reduced = share < 1 ? ` (${Math.round(share * 100)} % of the rated load, persons below)` : '';
  return value <= limit
    ? {
        what,
        value,
        unit,
        limit,
        verdict: 'within',
        sentence: `${what}: ${shown} of ${allowed}${reduced}, ${Math.round((1 - value / limit) * 100)} % left.`,
      }
    : {
        what,
        value,
        unit,
        limit,
        verdict: 'over',
        sentence: `${what} would carry ${shown}, more than ${allowed}${reduced}. Do not lift like this.`,
      };
}
