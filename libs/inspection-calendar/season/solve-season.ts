import { type IntegerProgramSolver, type PlainDate, invariant } from '#kernel';
import { type Demand, daysOf, findFewestDays } from '../cover/index.js';
import { type ItemState, findItemState } from '../dates/index.js';
import type { PossibleVisit, SeasonCase } from './season-case.js';
import { type Fixed, type NotSavedBecause, type SeasonNeed, daysAsked, fixedOf, needOf } from './season-needs.js';

/** An item of a visit: what the visit clears. */
export interface SeenItem {
  readonly id: string;
  /** Its last day of use when the visit comes: of its records, or of the visit before. null: it may not be used. */
  readonly until: PlainDate | null;
  /** Its last day of use by this visit, where it passes. */
  readonly carriesTo: PlainDate;
  /** The first day on which it is asked for and would be out of date. */
  readonly neededOn: PlainDate;
}

/** The list of a visit. */
export type SeenItems = readonly SeenItem[];

export interface SeasonVisit extends PossibleVisit {
  readonly items: SeenItems;
}

export type NotSaved = NotSavedBecause & { readonly id: string };

/** How many visits and examinations; no choice has fewer than the proven `...AtLeast`. */
export interface SeasonCount {
  readonly visits: number;
  readonly visitsAtLeast: number;
  readonly examinations: number;
  /** Of choices of so few visits. */
  readonly examinationsAtLeast: number;
}

export interface SeasonAnswer {
  readonly count: SeasonCount;
  readonly visits: readonly SeasonVisit[];
  readonly notSaved: readonly NotSaved[];
  /** Items that are promised on some day of the window. */
  readonly used: number;
  /** What it would take to keep everything in date on every day, idle or not. */
  readonly withIdle: SeasonCount & { readonly notSaved: number };
  readonly states: readonly ItemState[];
}

/**
 * The fewest visits that keep every item in date on every day on which it is promised, and of those the fewest examinations; `solver` is asked where the
 * counted search proves nothing. What waits at its depot may run out there.
 */
export function solveSeason(problem: SeasonCase, solver?: IntegerProgramSolver): SeasonAnswer {
  const states = problem.items.map((item) => findItemState({ ...item }, problem.window));
  const fixed = fixedOf(problem);
  const { needs, notSaved, answer } = solveFor(problem, states, fixed, false, solver);
  const { count, ...idle } = solveFor(problem, states, fixed, true);
  const used = problem.items.filter((item) => daysAsked(problem, item, false).length > 0).length;
  const stateOf = new Map(states.map((each) => [each.id, each]));
  const visits = answer.chosen.map((at) => ({ ...fixed.visits[at]!, items: [] as SeenItem[] }));
  for (const need of needs) {
    let until = stateOf.get(need.item.id)?.dueOn ?? null;
    for (const { at, neededOn } of seenAt(need, answer.chosen)) {
      const visit = visits[answer.chosen.indexOf(at)];
      invariant(visit, 'an item is seen at a chosen visit');
      const carriesTo = fixed.dueAfter(need.item, visit.on);
      visit.items.push({ id: need.item.id, until, carriesTo, neededOn });
      until = carriesTo;
    }
  }
  return {
    count: countOf(answer),
    visits: visits.filter((each) => each.items.length > 0),
    notSaved,
    used,
    withIdle: { ...count, notSaved: idle.notSaved.length },
    states,
  };
}

type Chosen = ReturnType<typeof findFewestDays>;

const countOf = ({ chosen, daysAtLeast, examinations, examinationsAtLeast }: Chosen): SeasonCount => ({
  visits: chosen.length,
  visitsAtLeast: daysAtLeast,
  examinations,
  examinationsAtLeast,
});

interface Solved {
  readonly needs: readonly SeasonNeed[];
  readonly notSaved: readonly NotSaved[];
  readonly answer: Chosen;
  readonly count: SeasonCount;
}

function solveFor(
  problem: SeasonCase,
  states: readonly ItemState[],
  fixed: Fixed,
  isEveryDay: boolean,
  solver?: IntegerProgramSolver,
): Solved {
  const needs: SeasonNeed[] = [];
  const notSaved: NotSaved[] = [];
  problem.items.forEach((item, index) => {
    const need = needOf(item, states[index]!, daysAsked(problem, item, isEveryDay), fixed);
    if (!need) return;
    if ('code' in need) notSaved.push({ id: item.id, ...need });
    else needs.push(need);
  });
  const answer = findFewestDays(demandsOf(needs), fixed.visits.length, solver);
  return { needs, notSaved, answer, count: countOf(answer) };
}

/** Items that need the same visits are one demand. */
function demandsOf(needs: readonly SeasonNeed[]): Demand[] {
  const alike = new Map<string, { seen: readonly number[]; spans: SeasonNeed['spans']; items: number }>();
  for (const { seen, spans } of needs) {
    const key = `${seen.join()} ${spans.join(';')}`;
    const known = alike.get(key);
    if (known) known.items++;
    else alike.set(key, { seen, spans, items: 1 });
  }
  return [...alike.values()];
}

/** The chosen visits at which an item is examined, with the first day that each is for. */
function seenAt({ seen, spans, neededOn }: SeasonNeed, chosen: readonly number[]): { at: number; neededOn: PlainDate }[] {
  const days = daysOf({ items: 1, seen, spans }, chosen);
  invariant(days, 'the chosen visits serve every need');
  return days.map((at) => ({ at, neededOn: neededOn[spans.findIndex(([from, to]) => from <= at && at <= to)]! }));
}
