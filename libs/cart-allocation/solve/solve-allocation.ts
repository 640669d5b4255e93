import { type IntegerProgramSolver, WorkBudget, type WorkLimits, seededRandom } from '#kernel';
import { type BoundAnswer, BoundProgram, type Choice, findShortage } from '../bound/index.js';
import { beamSchedule, plainChoice, straightSchedule } from '../carry-out/index.js';
import {
  type AllocationAnswer,
  type AllocationCase,
  type FloorPlan,
  type NumberedMove,
  type Preferences,
  type StoppedBy,
  floorPlanOf,
} from '../case/index.js';
import { type AllocationMismatch, verifyAllocation } from '../check/index.js';
import { searchExactly } from '../exact/index.js';
import { pinnedWorkOf, searchPinned, settledChoice } from '../pinned/index.js';

/** A unit of work is one cart looked at in one state of a search, about a microsecond; iterations of the integer program are counted in such units too. */
export interface AllocationLimits extends Omit<WorkLimits, 'work'> {
  /** Units; `usualAllocationWork` where nothing is said. */
  readonly work?: number;
  readonly integerProgram: IntegerProgramSolver;
  /** Ties and wishes: never at the price of a move. */
  readonly prefer?: Preferences;
}

/** Enough to prove what a depot meets in a day, and done within seconds. */
export const usualAllocationWork = 5_000_000;

export interface CheckedAllocation extends AllocationAnswer {
  /** What the checker found when it carried the answer out on the case as written: empty, or the answer must not be used. */
  readonly mismatch: readonly AllocationMismatch[];
}

/** Choices that are tried beside the first before the exact search. */
const otherChoices = 8;
/** Widths of the beam that carries a choice out: another choice is often cheaper than a wider beam. */
const narrow = [4, 16];
const wide = [16, 64];
const widest = [64, 256];
/** After so many other choices the first one is looked at again with the widest beam. */
const widestAt = 6;
/** Part of what is left for another choice. */
const otherShare = 0.2;
/** Above this many carts ties are left as they fall. */
const mostCartsForTies = 100;
/** Plans of more moves than this are not searched for exactly: nothing would come of it. */
const mostMovesForExact = 2000;

/** Part of the work for the order of the boxes where the carts are settled; the rest is for wishes. */
const settledShare = 0.9;

interface Plan {
  readonly cartOf: readonly number[];
  readonly moves: readonly NumberedMove[];
}

interface Bounded {
  readonly best: Plan;
  /** No plan has fewer moves. */
  readonly bound: number;
}

/**
 * The fewest box moves that turn the floor into the wanted loads, in an order that can be carried out. This is the blocks world with interchangeable
 * blocks (Gupta and Nau, Artificial Intelligence 56, 1992: a shortest plan is NP-hard to find), so it is done from both sides: an integer program says
 * which carts to use and below how many moves no plan can be (`bound`); a beam search carries that choice out (`carry-out`); where the two do
 * not meet, other choices of equal length are tried, and an exact search closes what it can (`exact`). Boxes that cannot stand for one another have a
 * search of their own (`pinned`), alone where the carts are settled, and for each choice of the exact search elsewhere. Whatever comes out is carried out once more on
 * the case as it was written, by a checker that knows nothing of all this (`check`).
 */
export function solveAllocation(problem: AllocationCase, limits: AllocationLimits): CheckedAllocation {
  const answer = search(problem, limits);
  return { ...answer, mismatch: verifyAllocation(problem, answer) };
}

function search(problem: AllocationCase, limits: AllocationLimits): AllocationAnswer {
  const floor = floorPlanOf(problem, limits.prefer);
  const shortage = findShortage(problem, floor);
  if (shortage)
    return {
      status: 'infeasible',
      boxMoves: 0,
      bound: 0,
      stoppedBy: 'proof',
      assignments: [],
      moves: [],
      ...shortage,
      measures: { cartsTouched: 0, work: 0 },
    };
  if (floor.loads.length === 0) return answerOf(problem, floor, { cartOf: [], moves: [] }, 0, 'proof', 0);
  const budget = new WorkBudget({ ...limits, work: limits.work ?? usualAllocationWork });
  const program = new BoundProgram(floor, limits.integerProgram, budget);
  const { best, bound } = withSettledCarts(floor, budget) ?? withAnyCarts(floor, program, budget);
  const isProved = best.moves.length === bound;
  const isForTies = isProved && floor.carts.length <= mostCartsForTies && !budget.isSpent();
  const plan = isForTies ? fewerCarts(floor, best, program, budget) : best;
  const stoppedBy = budget.stoppedBy === 'clock' ? 'clock' : isProved ? 'proof' : 'work';
  return answerOf(problem, floor, plan, bound, stoppedBy, Math.round(budget.workDone));
}

/** Where it is plain which carts are best: nothing but the order of the boxes is searched for. */
function withSettledCarts(floor: FloorPlan, budget: WorkBudget): Bounded | undefined {
  const cartOf = settledChoice(floor);
  const work = cartOf && pinnedWorkOf(floor, cartOf);
  if (!cartOf || !work) return undefined;
  const { bound, moves } = searchPinned(floor, work, Infinity, budget, settledShare);
  return moves && { best: { cartOf, moves }, bound };
}

function withAnyCarts(floor: FloorPlan, program: BoundProgram, budget: WorkBudget): Bounded {
  const { best, bound } = tryOtherChoices(floor, program, budget, program.solve({ share: 0.5 }));
  if (best.moves.length <= bound || best.moves.length > mostMovesForExact) return { best, bound: Math.min(bound, best.moves.length) };
  const closed = searchExactly(floor, bound, best.moves.length, budget);
  const plan = closed.found ?? best;
  return { best: plan, bound: Math.min(Math.max(bound, closed.bound), plan.moves.length) };
}

/** Among choices with equally many moves some can be carried out without a loss and some cannot: look at a few. */
function tryOtherChoices(floor: FloorPlan, program: BoundProgram, budget: WorkBudget, first: BoundAnswer): Bounded {
  let { bound } = first;
  let best = carryOut(floor, first.choice ?? plainChoice(floor), bound, narrow, budget);
  const random = seededRandom(1);
  for (let more = 0; first.choice && more < otherChoices && best.moves.length > bound && !budget.isSpent(); more++) {
    const isWidest = more === widestAt;
    const other = isWidest ? first : program.solve({ share: otherShare, vary: random });
    bound = Math.max(bound, other.bound);
    // A program that was cut off has no choice: then the first one is carried out with other ties.
    const plan = carryOut(floor, other.choice ?? first.choice, bound, isWidest ? widest : more < 3 ? narrow : wide, budget, more + 1);
    if (plan.moves.length < best.moves.length) best = plan;
  }
  return { best, bound };
}

/** Another plan of as few moves that touches fewer carts, where the program finds one that can be carried out. */
function fewerCarts(floor: FloorPlan, best: Plan, program: BoundProgram, budget: WorkBudget): Plan {
  const { choice } = program.solve({ share: 0.2, fewest: 'carts touched' });
  if (!choice) return best;
  const other = carryOut(floor, choice, best.moves.length, narrow, budget);
  return other.moves.length === best.moves.length && cartsTouched(other) < cartsTouched(best) ? other : best;
}

/** Step by step as the choice has it, then wider and wider beams; ends as soon as the bound is met. */
function carryOut(floor: FloorPlan, choice: Choice, bound: number, widths: readonly number[], budget: WorkBudget, ties = 0): Plan {
  let best = straightSchedule(floor, choice);
  for (const width of widths) {
    if (best.length <= bound || budget.isSpent()) break;
    const moves = beamSchedule(floor, choice, width, seededRandom(width + ties), budget);
    if (moves.length < best.length) best = moves;
  }
  return { cartOf: choice.cartOf, moves: best };
}

const cartsTouched = ({ moves }: Plan): number => new Set(moves.flatMap(({ from, to }) => [from, to]).filter((cart) => cart >= 0)).size;

function answerOf(
  problem: AllocationCase,
  floor: FloorPlan,
  plan: Plan,
  bound: number,
  stoppedBy: StoppedBy,
  work: number,
): AllocationAnswer {
  const place = (cart: number) => (cart < 0 ? 'floor' : floor.carts[cart]!.id);
  const stacks = floor.carts.map((cart) => [...cart.stack]);
  for (const { box, from, to } of plan.moves) {
    if (from >= 0) stacks[from]!.pop();
    if (to >= 0) stacks[to]!.push(box);
  }
  const cartOf = new Map(floor.loads.map((load, index) => [load.id, plan.cartOf[index]!]));
  return {
    status: plan.moves.length === bound ? 'optimal' : 'feasible',
    boxMoves: plan.moves.length,
    bound,
    stoppedBy,
    assignments: problem.loads.map(({ id }) => ({
      load: id,
      cart: floor.carts[cartOf.get(id)!]!.id,
      boxes: [...stacks[cartOf.get(id)!]!].reverse().map((box) => floor.serials[box]!),
    })),
    moves: plan.moves.map(({ box, from, to }) => ({ box: floor.serials[box]!, from: place(from), to: place(to) })),
    measures: { cartsTouched: cartsTouched(plan), work },
  };
}
