import { type PlainDate, addDays } from '#kernel';
import type { Show, Tour } from '../shapes/index.js';

/** An item that the plan of the show uses, with the last day on which it may be, as the dates of that plan have it. */
export interface DatedItem {
  readonly item: string;
  readonly lastDay: PlainDate;
}

/** What other days of a show break or change, each with what it is about. */
export type Broken =
  | { readonly is: 'no days' }
  | { readonly is: 'before the tour' | 'after the tour'; readonly day: PlainDate }
  /** Two shows on one day want the same kit. */
  | { readonly is: 'overlaps'; readonly show: string; readonly from: PlainDate; readonly to: PlainDate }
  /** It changes places with a show that it came before, or after. */
  | { readonly is: 'now after' | 'now before'; readonly show: string }
  /** No day is left between the two to drive and to rig. */
  | { readonly is: 'no day between'; readonly show: string }
  | { readonly is: 'runs out'; readonly item: string; readonly lastDay: PlainDate }
  /** The plans of these shows are older than the move. */
  | { readonly is: 'plans grow old'; readonly shows: readonly string[] };

/**
 * What breaks when a show is moved: by the days of the tour, by the shows around it, and by what it flies and rides in (`items`), which must be in date
 * through its last day. What was so before the move is not told again. `planned`: shows of the tour that have a plan.
 */
export function brokenByMove(
  tour: Tour,
  showId: string,
  days: { readonly from: PlainDate; readonly to: PlainDate },
  { items, planned }: { readonly items: readonly DatedItem[]; readonly planned: readonly string[] },
): readonly Broken[] {
  const show = tour.shows.find((each) => each.id === showId);
  if (!show || (show.from === days.from && show.to === days.to)) return [];
  if (days.to < days.from) return [{ is: 'no days' }];
  const others = tour.shows.filter((each) => each.id !== showId);
  return [
    ...(days.from < tour.prepFrom ? [{ is: 'before the tour' as const, day: tour.prepFrom }] : []),
    ...(days.to > tour.returnTo ? [{ is: 'after the tour' as const, day: tour.returnTo }] : []),
    ...others.flatMap((other) => brokenBeside(show, days, other)),
    ...items.filter(({ lastDay }) => lastDay < days.to && lastDay >= show.to).map((each) => ({ is: 'runs out' as const, ...each })),
    ...(planned.length > 0
      ? [{ is: 'plans grow old' as const, shows: tour.shows.filter((each) => planned.includes(each.id)).map((each) => each.name) }]
      : []),
  ];
}

type Days = Pick<Show, 'from' | 'to'>;

const overlap = (one: Days, other: Days): boolean => one.from <= other.to && other.from <= one.to;
const touch = (one: Days, other: Days): boolean => addDays(one.to, 1) === other.from || addDays(other.to, 1) === one.from;

function brokenBeside(was: Days, is: Days, other: Show): readonly Broken[] {
  const broken: Broken[] = [];
  if (overlap(is, other)) {
    if (!overlap(was, other)) broken.push({ is: 'overlaps', show: other.name, from: other.from, to: other.to });
    return broken;
  }
  if (was.from < other.from && is.from > other.from) broken.push({ is: 'now after', show: other.name });
  if (was.from > other.from && is.from < other.from) broken.push({ is: 'now before', show: other.name });
  if (touch(is, other) && !touch(was, other)) broken.push({ is: 'no day between', show: other.name });
  return broken;
}
