import { type Period, type PlainDate, addDays, daysBetween } from '#kernel';
import { dueAfterExamination, findLastRecordOn, getPeriod } from '../dates/index.js';
import type { ItemState } from '../dates/index.js';
import { isAt, placeOn } from './place-on.js';
import type { PossibleVisit, SeasonCase, SeasonItem, SeasonTour, VisitPlace } from './season-case.js';

/** Days and places in which an item could be seen to be saved. */
export interface ChanceToSee {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly at: VisitPlace;
}

/** Why no possible visit saves an item: it failed; no examiner comes between; one comes, and the item is elsewhere. `neededOn`: the first day that nothing saves. */
export interface NotSavedBecause {
  readonly code: 'failed' | 'nobody-comes' | 'elsewhere';
  readonly neededOn: PlainDate;
  readonly chances: readonly ChanceToSee[];
}

/** What one item needs: one of its visits in each span, in places of the sorted list of visits. `neededOn`: the day that each span serves. */
export interface SeasonNeed {
  readonly item: SeasonItem;
  readonly seen: readonly number[];
  readonly spans: readonly (readonly [from: number, to: number])[];
  readonly neededOn: readonly PlainDate[];
}

export interface Fixed {
  readonly tours: ReadonlyMap<string, SeasonTour>;
  readonly visits: readonly PossibleVisit[];
  readonly dueAfter: (item: SeasonItem, on: PlainDate) => PlainDate;
}

export function fixedOf({ tours, visits, window }: SeasonCase): Fixed {
  const known = new Map<string, PlainDate>();
  const periods = new Map<string, Period>();
  const period = (text: string): Period => {
    const read = periods.get(text) ?? getPeriod(text);
    periods.set(text, read);
    return read;
  };
  const dueAfter = ({ intervals }: SeasonItem, on: PlainDate): PlainDate => {
    const key = `${intervals.join()} ${on}`;
    const due = known.get(key) ?? dueAfterExamination(on, intervals.map(period)) ?? window.to;
    known.set(key, due);
    return due;
  };
  return {
    tours: new Map(tours.map((each) => [each.id, each])),
    visits: [...visits].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.id < b.id ? -1 : 1)),
    dueAfter,
  };
}

/** The days on which an item must be in date, first to last, none twice: those it is promised on, or every day of the window. */
export function daysAsked(
  { window }: SeasonCase,
  { stays }: SeasonItem,
  isEveryDay: boolean,
): readonly (readonly [PlainDate, PlainDate])[] {
  if (isEveryDay) return [[window.from, window.to]];
  const within = stays
    .map(({ from, to }) => [from > window.from ? from : window.from, to < window.to ? to : window.to] as const)
    .filter(([from, to]) => from <= to)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const merged: [PlainDate, PlainDate][] = [];
  for (const [from, to] of within) {
    const last = merged.at(-1);
    if (last && from <= addDays(last[1], 1)) last[1] = to > last[1] ? to : last[1];
    else merged.push([from, to]);
  }
  return merged;
}

/**
 * What the item needs over the days on which it is asked for. A day t after its last day of use is served by a visit before t that is later than its last
 * record and carries it to t or beyond; later visits carry further, so the visits that serve t lie between two ends which rise with t. undefined: nothing.
 */
export function needOf(
  item: SeasonItem,
  state: ItemState,
  asked: readonly (readonly [PlainDate, PlainDate])[],
  fixed: Fixed,
): SeasonNeed | NotSavedBecause | undefined {
  if (state.state === 'no interval') return undefined;
  const firstAsked = asked[0]?.[0];
  if (firstAsked === undefined) return undefined;
  if (state.state === 'failed') return { code: 'failed', neededOn: firstAsked, chances: [] };
  const { visits, tours } = fixed;
  const after = findLastRecordOn(item) ?? '';
  const seen = visits.flatMap((visit, at) => (visit.on > after && isAt(placeOn(item, visit.on, tours), visit) ? [at] : []));
  const carries = new Map(seen.map((at) => [at, fixed.dueAfter(item, visits[at]!.on)]));
  const spans: [number, number][] = [];
  const neededOn: PlainDate[] = [];
  let [low, high] = [0, -1];
  for (const on of daysThatDecide(asked, state.dueOn, [...carries.values()])) {
    while (high + 1 < seen.length && visits[seen[high + 1]!]!.on < on) high++;
    while (low <= high && carries.get(seen[low]!)! < on) low++;
    if (low > high) return notSaved(item, on, after, fixed);
    const last = spans.at(-1);
    if (last && last[0] === seen[low] && last[1] <= seen[high]!) continue;
    spans.push([seen[low]!, seen[high]!]);
    neededOn.push(on);
  }
  return spans.length === 0 ? undefined : { item, seen, spans, neededOn };
}

/**
 * Of the days asked for after the last day of use: the first of each period, and each after the day to which some visit carries. On all others the visits
 * that serve are those of the day before, or more.
 */
function daysThatDecide(
  asked: readonly (readonly [PlainDate, PlainDate])[],
  dueOn: PlainDate | null,
  carriedTo: readonly PlainDate[],
): PlainDate[] {
  const ends = [...new Set(carriedTo)].map((each) => addDays(each, 1));
  return asked.flatMap(([from, to]) => {
    const first = dueOn !== null && dueOn >= from ? addDays(dueOn, 1) : from;
    return first > to ? [] : [first, ...ends.filter((each) => each > first && each <= to)];
  });
}

const mostChances = 3;

/** No visit serves this day: whether any examiner comes in time at all, and where he would find the item. */
function notSaved(item: SeasonItem, neededOn: PlainDate, after: PlainDate, { visits, tours, dueAfter }: Fixed): NotSavedBecause {
  const inTime = (on: PlainDate): boolean => on > after && on < neededOn && dueAfter(item, on) >= neededOn;
  const chances: ChanceToSee[] = [];
  for (
    let on = addDays(neededOn, -1);
    inTime(on) && chances.length <= mostChances && daysBetween(on, neededOn) < 400;
    on = addDays(on, -1)
  ) {
    const at = placeOn(item, on, tours);
    const last = chances.at(-1);
    if (at.kind === 'away') continue;
    if (last && last.from === addDays(on, 1) && JSON.stringify(last.at) === JSON.stringify(at))
      chances[chances.length - 1] = { ...last, from: on };
    else chances.push({ from: on, to: on, at });
  }
  return {
    code: visits.some((each) => inTime(each.on)) ? 'elsewhere' : 'nobody-comes',
    neededOn,
    chances: chances.slice(0, mostChances).reverse(),
  };
}
