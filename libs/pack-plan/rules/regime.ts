import type { LoadRule, Show } from '#tour-file';
import type { Factor } from '../contract/index.js';

type Element = NonNullable<LoadRule['workingCoefficients']>['elements'][number]['element'];

/** Factor on point loads: of the class of hoisting at its speed where the regime names one, else the regime's own. */
export const dynamicFactorOf = (rule: LoadRule): number =>
  rule.hoisting ? rule.hoisting.least + rule.hoisting.perSpeedSPerM * rule.hoisting.speedMps : rule.dynamicFactor;

/** What of the rated load of an element may be used: all of it while nobody is below, else by its coefficients or by the general share. */
export function personsBelowFactors(rule: LoadRule, show: Pick<Show, 'personsBelow'>, element: Element): readonly Factor[] {
  if (!show.personsBelow) return [];
  const found = rule.workingCoefficients?.elements.find((each) => each.element === element);
  if (found)
    return [
      {
        what: `persons below: coefficient ${found.personsBelow} instead of ${found.nobodyBelow}`,
        factor: found.nobodyBelow / found.personsBelow,
        source: rule.workingCoefficients!.source,
        status: rule.workingCoefficients!.status,
      },
    ];
  return [generalShare(rule)];
}

const generalShare = (rule: LoadRule): Factor => ({
  what: 'persons below',
  factor: rule.usableShareWithPersonsBelow,
  source: rule.source,
  status: rule.status,
});

/** A shackle pulled aside by `angleDeg` from its line: factor 0 where that is not permitted, undefined where the regime has no rule. */
export function sideLoadFactor(rule: LoadRule, angleDeg: number): Factor | undefined {
  if (!rule.sideLoad) return undefined;
  const band = [...rule.sideLoad.bands].sort((a, b) => a.upToDeg - b.upToDeg).find((each) => angleDeg <= each.upToDeg + 1e-9);
  return {
    what: `side load at ${Math.round(angleDeg * 10) / 10}°`,
    factor: band?.share ?? 0,
    source: rule.sideLoad.source,
    status: rule.sideLoad.status,
  };
}

/** The class of a hoist against its use in this show. */
export interface HoistUse {
  readonly factors: readonly Factor[];
  readonly verdict: 'within' | 'over' | 'no rule on file';
  readonly sentence: string | null;
}

export function hoistUse(
  rule: LoadRule,
  show: Pick<Show, 'personsBelow' | 'movesOverPersons'>,
  hoist: { readonly model: string; readonly hoistClass?: string | undefined },
  hasSecondary: boolean,
): HoistUse {
  if (!show.personsBelow && !show.movesOverPersons) return { factors: [], verdict: 'within', sentence: null };
  const general = [generalShare(rule)];
  if (!rule.hoistClasses)
    return {
      factors: general,
      verdict: 'no rule on file',
      sentence: 'The regime has no rule on what a class of hoist may do over people.',
    };
  const found = rule.hoistClasses.classes.find((each) => each.hoistClass === hoist.hoistClass);
  if (!found)
    return {
      factors: general,
      verdict: 'no rule on file',
      sentence: `${hoist.model} has ${hoist.hoistClass === undefined ? 'no class on file' : `the class ${hoist.hoistClass}, of which the regime says nothing`}: whether it may hold over people is not known.`,
    };
  const factors = [
    {
      what: `persons below a hoist of class ${found.hoistClass}`,
      factor: found.usableShareWithPersonsBelow,
      source: rule.hoistClasses.source,
      status: rule.hoistClasses.status,
    },
  ];
  const of = `${hoist.model}, class ${found.hoistClass}`;
  if (show.movesOverPersons && !found.moveOverPersons)
    return { factors, verdict: 'over', sentence: `${of}, must not move a load over people. Clear the area, or take another hoist.` };
  if (found.holdOverPersons === 'not allowed') return { factors, verdict: 'over', sentence: `${of}, must not hold a load over people.` };
  if (found.holdOverPersons === 'with secondary suspension' && !hasSecondary)
    return { factors, verdict: 'over', sentence: `${of}, holds over people only with a secondary suspension, and the hang has none.` };
  return {
    factors,
    verdict: 'within',
    sentence: `${of}: may hold over people${found.holdOverPersons === 'allowed' ? '' : ' with the secondary suspension of this hang'}${show.movesOverPersons ? ' and move over them' : ''}.`,
  };
}

/** Titles of what in the regime was written down from memory. */
export function unseenRules(rule: LoadRule): readonly string[] {
  const parts: [string, { readonly status: string } | undefined][] = [
    [rule.title, rule],
    ['class of hoisting', rule.hoisting],
    ['working coefficients', rule.workingCoefficients],
    ['side load of shackles', rule.sideLoad],
    ['angle of bridle legs', rule.legAngle],
    ['classes of hoists', rule.hoistClasses],
    ['secondary suspension', rule.secondarySuspension],
    ['reserve of the picks', rule.reserve],
    ['tolerance of load cells', rule.reading],
    ['wear limits', rule.wear],
  ];
  return parts.filter(([, part]) => part?.status === 'from memory').map(([title]) => title);
}

/** A worn dimension against the regime's limit: out of use when `lossShare` of the original or more is gone. */
export const isWornOut = (originalMm: number, measuredMm: number, lossShare: number): boolean =>
  measuredMm <= leastDimensionMm(originalMm, lossShare) + 1e-9;

export const leastDimensionMm = (originalMm: number, lossShare: number): number => originalMm * (1 - lossShare);
