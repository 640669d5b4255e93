import { type IntegerProgramSolver, invariant } from '#kernel';
import { type ExaminationCount, findFewestExaminations } from './fewest-examinations.js';
import { findFewestDays } from './cover/index.js';
import { listDemands } from './visit-demands.js';
import type { VisitNeed } from './visit-needs.js';

/** Chosen places in the list of days, and for each of them the needs seen there. */
export interface VisitPlan extends ExaminationCount {
  readonly chosen: readonly number[];
  readonly seen: readonly (readonly VisitNeed[])[];
  /** No plan has fewer days than this; equal to their number where that is proven. */
  readonly daysAtLeast: number;
}

/**
 * The fewest visit days, proven; where items are not on every day where the examiner is, by the search of cover/.
 *
 * Let u < w be two chosen days with none between. An item allows the pair when w is no later than its first due date, or
 * when u counts for it and carries it to w (or to the end); an item that is seen on every chosen day from its last
 * possible first visit on is as well off as it can be, because a later visit never ends earlier. So a set of days serves
 * all items exactly when each pair of neighbours (with "before all" and "the end") is allowed by each item: w <= reach(u)
 * = the least over the items. reach never falls when u grows; hence going to the last day within reach each time gives
 * the fewest days, and each of them as late as it can be in any plan of that many days.
 */
export function planVisits(needs: readonly VisitNeed[], dayCount: number, solver?: IntegerProgramSolver): VisitPlan {
  if (needs.length === 0) return { chosen: [], seen: [], daysAtLeast: 0, examinations: 0, examinationsAtLeast: 0 };
  if (needs.some((each) => each.seen !== undefined)) {
    const { chosen, ...count } = findFewestDays(listDemands(needs, dayCount), dayCount, solver);
    return { chosen, seen: listSeen(needs, chosen, dayCount), ...count };
  }
  const reach = listReach(needs, dayCount);
  const latest = takeLatest(needs, reach, dayCount);
  const { chosen, ...count } = findFewestExaminations({ needs, reach, latest, dayCount });
  return { chosen, seen: listSeen(needs, chosen, dayCount), daysAtLeast: chosen.length, ...count };
}

/** reach[u]: the last day that may follow a chosen day u (dayCount: the end of the window is reached). */
function listReach(needs: readonly VisitNeed[], dayCount: number): readonly number[] {
  return Array.from({ length: dayCount }, (_, at) =>
    needs.reduce((least, { first, last, carries }) => Math.min(least, at < first ? last : Math.max(last, carries[at]!)), dayCount),
  );
}

function takeLatest(needs: readonly VisitNeed[], reach: readonly number[], dayCount: number): readonly number[] {
  const chosen: number[] = [];
  let at = needs.reduce((least, need) => Math.min(least, need.last), dayCount);
  while (at < dayCount) {
    chosen.push(at);
    const next = reach[at]!;
    invariant(next > at, 'items that can be saved one by one can be saved together');
    at = next;
  }
  return chosen;
}

/** Each item is seen as seldom as the chosen days allow, each time as late as possible. */
function listSeen(needs: readonly VisitNeed[], chosen: readonly number[], dayCount: number): VisitNeed[][] {
  const seen: VisitNeed[][] = chosen.map(() => []);
  for (const need of needs) {
    let limit = need.last;
    while (limit < dayCount) {
      const place = chosen.findLastIndex((each) => each <= limit && (need.seen?.includes(each) ?? true));
      invariant(place >= 0 && chosen[place]! >= need.first, 'a chosen day lies where the item needs one');
      seen[place]!.push(need);
      invariant(need.carries[chosen[place]!]! > limit, 'a visit carries an item further');
      limit = need.carries[chosen[place]!]!;
    }
  }
  return seen;
}
