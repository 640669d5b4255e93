import { standardGravityMps2 } from '#kernel';
import type { CellReading, ComparedPart, ReadingFact } from '#trade';
import { type Words, english, tell } from '#words';
import type { Comparison, HangResult, PicksResult } from '../contract/index.js';

export interface ReadingJudgement {
  readonly computedKg: number | null;
  readonly differenceShare: number | null;
  readonly verdict: 'agrees' | 'differs' | 'not judged';
  readonly sentence: string;
  readonly fact: ReadingFact;
}

const verdicts = {
  'nothing-computed': 'not judged',
  'over-allowed': 'differs',
  'no-tolerance': 'not judged',
  agrees: 'agrees',
  'beyond-tolerance': 'differs',
} as const;

/** A load-cell reading (kg) beside what was computed, judged by the tolerance of the regime. */
export function judgeReading(
  hang: HangResult,
  hole: string,
  place: CellReading['place'],
  readingKg: number,
  rule: Pick<PicksResult['loadRule'], 'readingTolerance' | 'dynamicFactor'>,
  words: Words = english,
): ReadingJudgement {
  const read: CellReading = { readingKg, place, hole };
  const fact = readingFact(hang, read, rule);
  const pick = hang.picks.find((each) => each.hole === hole);
  const computedKg = pick ? computedOf(pick, place) : null;
  return {
    computedKg,
    differenceShare: computedKg === null ? null : (readingKg - computedKg) / computedKg,
    verdict: verdicts[fact.code],
    sentence: tell(words.readings, fact),
    fact,
  };
}

const computedOf = (pick: HangResult['picks'][number], place: CellReading['place']): number =>
  place === 'at the hook' ? pick.hookLoadKg : pick.pointLoadN / standardGravityMps2;

function readingFact(
  hang: HangResult,
  read: CellReading,
  { readingTolerance, dynamicFactor }: Pick<PicksResult['loadRule'], 'readingTolerance' | 'dynamicFactor'>,
): ReadingFact {
  const pick = hang.picks.find((each) => each.hole === read.hole);
  if (!pick) return { code: 'nothing-computed', read };
  const computedKg = computedOf(pick, read.place);
  const differenceShare = (read.readingKg - computedKg) / computedKg;
  // What is read is compared with what is allowed, whatever was computed.
  const over = pick.comparisons.flatMap((each) => {
    const { limit } = each;
    return limit !== null && partOfReading(each, read, dynamicFactor) > limit ? [{ part: partOf(each), limitKg: limit }] : [];
  });
  if (over.length > 0) return { code: 'over-allowed', read, over };
  if (readingTolerance === null) return { code: 'no-tolerance', read, computedKg, differenceShare };
  return Math.abs(differenceShare) <= readingTolerance
    ? { code: 'agrees', read, computedKg, differenceShare }
    : { code: 'beyond-tolerance', read, computedKg, differenceShare, toleranceShare: readingTolerance };
}

/** What was compared; of a plan that kept the words alone, as it was called. */
const partOf = ({ fact, what }: Comparison): ComparedPart => fact?.part ?? { code: 'as-called', name: what };

/** The part of a reading that a comparison of the pick is made with: the structure carries what is above the hoist, with its factor; the steel what is at the hook. */
function partOfReading({ fact }: Comparison, { place, readingKg }: CellReading, dynamicFactor: number): number {
  if (fact?.part.code === 'leg-anchor') return 0;
  if (fact?.part.code === 'structure') return place === 'above the hoist' ? readingKg * dynamicFactor : 0;
  return place === 'at the hook' ? readingKg : 0;
}
