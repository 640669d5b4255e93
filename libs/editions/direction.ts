import { canonicalJson, readPeriod } from '#kernel';

/** Cautious holds at once from anybody; permissive waits. What is unclear is permissive. */
export type Direction = 'cautious' | 'permissive';

/** Which way a value goes; never asked about equal ones. Undefined: not said. */
export type Compare = (was: unknown, wanted: unknown) => Direction;

export const unclear: Compare = () => 'permissive';

const when = (isCautious: boolean): Direction => (isCautious ? 'cautious' : 'permissive');

/** Of figures that bear, allow or last: less is cautious. */
export const lower: Compare = (was, wanted) => when(typeof was === 'number' && typeof wanted === 'number' && wanted < was);

/** Of figures that weigh, multiply or demand: more is cautious. */
export const higher: Compare = (was, wanted) => when(typeof was === 'number' && typeof wanted === 'number' && wanted > was);

/** Of a rated load with its unit: less in the same unit. Two units are for eyes to compare. */
export const lowerRating: Compare = (was, wanted) =>
  when(isObject(was) && isObject(wanted) && was.unit === wanted.unit && lower(was.value, wanted.value) === 'cautious');

/** Of what may be chosen from: nothing new in it. */
export const fewer: Compare = (was, wanted) => {
  if (!Array.isArray(was) || !Array.isArray(wanted)) return 'permissive';
  const known = new Set(was.map((each) => canonicalJson(each)));
  return when(wanted.every((each) => known.has(canonicalJson(each))));
};

/** Of a day until which, or from which, something lasts: none, or an earlier one. */
export const earlier: Compare = (was, wanted) => when(typeof was === 'string' && (wanted === undefined || (wanted as string) < was));

/** Of a day from which something grows old: an earlier one, or any where none was said. */
export const olderSince: Compare = (was, wanted) => when(typeof wanted === 'string' && (was === undefined || wanted < (was as string)));

/** Of how often something was used; not said is never. */
export const moreUsed: Compare = (was, wanted) => higher(was ?? 0, wanted ?? 0);

/** Of a state: anything but in service. */
export const outOfService: Compare = (_was, wanted) => when(wanted !== 'in service');

/** Of a part with its source: every figure named goes its way or stays, and everything else in it is as it was. */
export const inPart =
  (figures: Readonly<Record<string, Compare>>): Compare =>
  (was, wanted) => {
    if (!isObject(was) || !isObject(wanted)) return 'permissive';
    const keys = new Set([...Object.keys(was), ...Object.keys(wanted)]);
    return when(
      [...keys].every(
        (key) =>
          canonicalJson(was[key] ?? null) === canonicalJson(wanted[key] ?? null) ||
          (figures[key] ?? unclear)(was[key], wanted[key]) === 'cautious',
      ),
    );
  };

/**
 * Of how often something is examined: each interval of before has its own interval now that is no longer. None at all is never cautious: it takes the
 * place of what rules say.
 */
export function directionOfIntervals(was: readonly string[], wanted: readonly string[]): Direction {
  const left = [...wanted];
  // The shortest first, each taking the longest that is short enough: what is left is best for those that follow.
  for (const interval of [...was].sort((a, b) => most(a) - most(b))) {
    const fitting = left.filter((each) => isNoLonger(each, interval)).sort((a, b) => most(b) - most(a))[0];
    if (fitting === undefined) return 'permissive';
    left.splice(left.indexOf(fitting), 1);
  }
  return when(was.length > 0);
}

/** Whether a period ends no later than another whatever day it begins on. */
function isNoLonger(one: string, other: string): boolean {
  const [a, b] = [readPeriod(one), readPeriod(other)];
  if (!a || !b) return false;
  return (a.months <= b.months && a.days <= b.days) || most(one) <= least(other);
}

/** Days in the longest and the shortest run of so many months: 28 to 31 in each, 365 to 366 in twelve. */
const most = (text: string): number => daysIn(text, 31, 366);
const least = (text: string): number => daysIn(text, 28, 365);

function daysIn(text: string, inMonth: number, inYear: number): number {
  const period = readPeriod(text);
  if (!period) return Number.NaN;
  return Math.floor(period.months / 12) * inYear + (period.months % 12) * inMonth + period.days;
}

export const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  value !== null && typeof value === 'object' && !Array.isArray(value);
