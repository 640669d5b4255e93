import { type PlainDate, addDays } from '#kernel';
import type { ExaminationsCase, ExaminedItem } from './examinations-case.js';
import { type ItemJudgement, lastExamination, later } from './judge-item.js';

export interface Visits {
  readonly count: number;
  readonly days: readonly { readonly on: PlainDate; readonly items: readonly string[] }[];
  readonly cannotBeSaved: readonly string[];
}

/** What one item asks of the examiner: a first visit after `after` and no later than `by`, then one more whenever it runs out before the last day. */
interface Need {
  readonly id: string;
  readonly after: PlainDate;
  readonly by: PlainDate;
  readonly renew: (visit: PlainDate) => PlainDate;
}

/**
 * The fewest visit days that keep every item that can be saved in date on every day of the window.
 *
 * Stabbing intervals from the left: the first day of any solution is no later than the earliest deadline, and moving it to the latest
 * visit day before that deadline serves every item that it served, with later dates after it (months later is monotone). So the
 * latest such day is always right, and the same holds for what remains. The days found are also the latest of all smallest sets.
 */
export function planVisits(problem: ExaminationsCase, judgements: readonly ItemJudgement[]): Visits {
  const { window } = problem;
  const calendar = [...new Set(problem.visitDays)].sort();
  const needs = problem.items.map((item, index) => needOf(item, judgements[index]!, window.from, window.to)).filter((each) => each !== undefined);
  const saved = needs.filter((need) => visitsOf(need, calendar, window.to) !== undefined);
  const days = fewestDays(saved, calendar, window.to);
  const seen = new Map<PlainDate, string[]>(days.map((day) => [day, []]));
  for (const need of saved) for (const day of visitsOf(need, days, window.to)!) seen.get(day)!.push(need.id);
  return {
    count: days.length,
    days: days.map((on) => ({ on, items: seen.get(on)! })),
    cannotBeSaved: needs.filter((need) => !saved.includes(need)).map((need) => need.id),
  };
}

/** undefined: in date throughout, or failed, which no visit mends. */
function needOf(item: ExaminedItem, { state, dueOn }: ItemJudgement, from: PlainDate, to: PlainDate): Need | undefined {
  if (state === 'failed' || (dueOn !== null && dueOn >= to)) return undefined;
  const by = state === 'falls due' ? dueOn! : addDays(from, -1);
  const dates = [lastExamination(item)?.on, ...item.events.map((each) => each.on)].filter((each) => each !== undefined);
  const after = dates.sort().at(-1) ?? '0000-00-00';
  return { id: item.id, after, by, renew: (visit) => item.intervals.map((each) => later(visit, each)).reduce((a, b) => (a < b ? a : b)) };
}

/** The fewest visits of one item among the given days, each as late as may be; undefined where they do not reach. */
function visitsOf(need: Need, days: readonly PlainDate[], to: PlainDate): PlainDate[] | undefined {
  const visits: PlainDate[] = [];
  let [after, by] = [need.after, need.by];
  while (by < to) {
    const visit = latestUpTo(days, by);
    if (visit === undefined || visit <= after) return undefined;
    visits.push(visit);
    [after, by] = [visit, need.renew(visit)];
  }
  return visits;
}

function fewestDays(needs: readonly Need[], calendar: readonly PlainDate[], to: PlainDate): PlainDate[] {
  const days: PlainDate[] = [];
  const open = needs.map((need) => ({ need, by: need.by }));
  for (;;) {
    const earliest = open.reduce<PlainDate | undefined>((least, { by }) => (by < to && (least === undefined || by < least) ? by : least), undefined);
    if (earliest === undefined) return days;
    const day = latestUpTo(calendar, earliest)!;
    days.push(day);
    for (const each of open) {
      if (day <= each.need.after) continue;
      const renewed = each.need.renew(day);
      if (renewed > each.by) each.by = renewed;
    }
  }
}

/** The last day of a sorted list that is no later than `by`. */
function latestUpTo(days: readonly PlainDate[], by: PlainDate): PlainDate | undefined {
  let [low, high] = [0, days.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (days[middle]! <= by) low = middle + 1;
    else high = middle;
  }
  return days[low - 1];
}
