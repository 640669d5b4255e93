import { groupDigits, standardGravityMps2 } from '#kernel';
import type { HangResult, PicksResult } from '../contract/index.js';

/** Where a load cell sits: at the hook it reads the hook load, above the hoist it reads the point load. */
export type CellPlace = 'at the hook' | 'above the hoist';

export interface ReadingJudgement {
  readonly computedKg: number | null;
  readonly differenceShare: number | null;
  readonly verdict: 'agrees' | 'differs' | 'not judged';
  readonly sentence: string;
}

/** A load-cell reading (kg) beside what was computed, judged by the tolerance of the regime. */
export function judgeReading(
  hang: HangResult,
  hole: string,
  place: CellPlace,
  readingKg: number,
  rule: Pick<PicksResult['loadRule'], 'readingTolerance' | 'dynamicFactor'>,
): ReadingJudgement {
  const pick = hang.picks.find((each) => each.hole === hole);
  const read = `${groupDigits(readingKg)} kg read ${place} of hole ${hole}`;
  if (!pick)
    return { computedKg: null, differenceShare: null, verdict: 'not judged', sentence: `${read}; nothing was computed for this point.` };
  const computedKg = place === 'at the hook' ? pick.hookLoadKg : pick.pointLoadN / standardGravityMps2;
  const differenceShare = (readingKg - computedKg) / computedKg;
  const off = `${groupDigits(Math.abs(differenceShare) * 100, 1)} % ${differenceShare < 0 ? 'less' : 'more'} than the computed ${groupDigits(computedKg)} kg`;
  // What is read is compared with what is allowed, whatever was computed.
  const over = pick.comparisons.filter(
    (each) => each.limit !== null && readingOf(each.what, place, readingKg, rule.dynamicFactor) > each.limit,
  );
  if (over.length > 0)
    return {
      computedKg,
      differenceShare,
      verdict: 'differs',
      sentence: `${read}: more than is allowed of ${over.map((each) => `${each.what} (${groupDigits(each.limit!)} kg)`).join(', ')}. Stop; let it down.`,
    };
  if (rule.readingTolerance === null)
    return { computedKg, differenceShare, verdict: 'not judged', sentence: `${read}: ${off}. The regime states no tolerance.` };
  return Math.abs(differenceShare) <= rule.readingTolerance
    ? { computedKg, differenceShare, verdict: 'agrees', sentence: `${read}: ${off}.` }
    : {
        computedKg,
        differenceShare,
        verdict: 'differs',
        sentence: `${read}: ${off}, beyond the ${groupDigits(rule.readingTolerance * 100, 1)} % of the regime. Stop; find out why before anything goes higher.`,
      };
}

/** The part of a reading that a comparison of the pick is made with: the structure carries what is above the hoist, with its factor; the steel what is at the hook. */
function readingOf(what: string, place: CellPlace, readingKg: number, dynamicFactor: number): number {
  if (what === 'structure above this point') return place === 'above the hoist' ? readingKg * dynamicFactor : 0;
  return place === 'at the hook' ? readingKg : 0;
}
