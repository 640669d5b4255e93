import { type IntegerProgramSolver, seededRandom } from '#kernel';
import { type Choice, findShortage, solveBound } from './bound/index.js';
import { beamSchedule } from './carry-out/index.js';
import {
  type AllocationAnswer,
  type AllocationCase,
  type FloorPlan,
  type NumberedMove,
  type Preferences,
  floorPlanOf,
  keptBoxes,
  mayCarry,
} from './case/index.js';
import { searchExactly } from './exact/index.js';

export interface AllocationLimits {
  readonly timeLimitSeconds: number;
  /** Milliseconds of any clock that does not go back. */
  readonly now: () => number;
  readonly integerProgram: IntegerProgramSolver;
  /** Ties and wishes: never at the price of a move. */
  readonly prefer?: Preferences;
}

/** Choices that are tried beside the first before the exact search. */
const otherChoices = 8;
/** Widths of the beam that carries a choice out: another choice is often cheaper than a wider beam. */
const narrow = [4, 16];
/** Above this many carts ties are left as they fall. */
const mostCartsForTies = 100;
const wide = [16, 64];
const widest = [64, 256];
/** After so many other choices the first one is looked at again with the widest beam. */
const widestAt = 6;

interface Plan {
  readonly cartOf: readonly number[];
  readonly moves: readonly NumberedMove[];
}

/**
 * The fewest box moves that turn the floor into the wanted loads, in an order that can be carried out. This is the blocks world with interchangeable
 * blocks (Gupta and Nau, Artificial Intelligence 56, 1992: a shortest plan is NP-hard to find), so it is done from both sides: an integer program says
 * which carts to use and below how many moves no plan can be (`bound`); a beam search carries that choice out (`carry-out`); where the two do
 * not meet, other choices of equal length are tried, and an exact search closes what it can in the time given (`exact`).
 */
export function solveAllocation(problem: AllocationCase, limits: AllocationLimits): AllocationAnswer {
  const floor = floorPlanOf(problem, limits.prefer);
  const shortage = findShortage(problem, floor);
  if (shortage)
    return { status: 'infeasible', boxMoves: 0, bound: 0, assignments: [], moves: [], ...shortage, measures: { cartsTouched: 0 } };
  if (floor.loads.length === 0) return answerOf(problem, floor, { cartOf: [], moves: [] }, 0);
  const deadline = limits.now() + limits.timeLimitSeconds * 1000;
  const secondsLeft = () => Math.max(0, (deadline - limits.now()) / 1000);
  const program = solveBound(floor, limits.integerProgram, Math.max(0.05, secondsLeft() * 0.7));
  const first = carryOut(floor, program.choice ?? plainChoice(floor), program.bound, narrow, () => secondsLeft() <= 0);
  let [best, bound] = [first, program.bound];
  // Among choices with equally many moves some can be carried out without a loss and some cannot: look at a few more.
  const random = seededRandom(1);
  for (let more = 0; program.choice && more < otherChoices && best.moves.length > bound && secondsLeft() > 0; more++) {
    const isLate = () => secondsLeft() <= 0;
    const other = more === widestAt ? program : solveBound(floor, limits.integerProgram, Math.max(0.05, secondsLeft() * 0.3), random);
    if (!other.choice) break;
    const plan = carryOut(floor, other.choice, bound, more === widestAt ? widest : more < 3 ? narrow : wide, isLate);
    if (plan.moves.length < best.moves.length) best = plan;
  }
  if (best.moves.length > bound) {
    const search = searchExactly(floor, bound, best.moves.length, { mustStop: () => secondsLeft() <= 0 });
    bound = Math.max(bound, search.bound);
    if (search.found) best = search.found;
  }
  if (floor.carts.length <= mostCartsForTies && best.moves.length === bound && secondsLeft() > 0)
    best = fewerCarts(floor, best, limits.integerProgram, secondsLeft());
  return answerOf(problem, floor, best, Math.min(bound, best.moves.length));
}

/** Another plan of as few moves that touches fewer carts, where the program finds one that can be carried out. */
function fewerCarts(floor: FloorPlan, best: Plan, integerProgram: IntegerProgramSolver, seconds: number): Plan {
  const { choice } = solveBound(floor, integerProgram, Math.min(1, seconds), () => 1, 'carts touched');
  if (!choice) return best;
  const other = carryOut(floor, choice, best.moves.length, narrow, () => false);
  const touched = (plan: Plan) => new Set(plan.moves.flatMap(({ from, to }) => [from, to]).filter((cart) => cart >= 0)).size;
  return other.moves.length === best.moves.length && touched(other) < touched(best) ? other : best;
}

/** Wider and wider beams; ends as soon as the bound is met. */
function carryOut(floor: FloorPlan, choice: Choice, bound: number, widths: readonly number[], mustStop: () => boolean): Plan {
  let best: NumberedMove[] | undefined;
  for (const width of widths) {
    if (best && (best.length <= bound || mustStop())) break;
    const moves = beamSchedule(floor, choice, width, seededRandom(width), mustStop);
    if (!best || moves.length < best.length) best = moves;
  }
  return { cartOf: choice.cartOf, moves: best! };
}

/** When the program found no choice in time: each load in turn takes the cart that fits it best, and any cart may give boxes. */
function plainChoice(floor: FloorPlan): Choice {
  const cartOf = new Array<number>(floor.loads.length).fill(-1);
  const loadOf = new Map<number, number>();
  const place = (load: number, tried: Set<number>): boolean => {
    const options = floor.carts
      .map((cart, index) => ({
        index,
        cost: mayCarry(cart, floor.loads[load]!)
          ? cart.stack.length - 2 * keptBoxes(floor, cart.stack, floor.loads[load]!.kinds)
          : Infinity,
      }))
      .filter(({ index, cost }) => cost < Infinity && !tried.has(index))
      .sort((a, b) => Number(loadOf.has(a.index)) - Number(loadOf.has(b.index)) || a.cost - b.cost);
    for (const { index } of options) {
      if (tried.has(index)) continue;
      tried.add(index);
      const other = loadOf.get(index);
      if (other !== undefined && !place(other, tried)) continue;
      loadOf.set(index, load);
      cartOf[load] = index;
      return true;
    }
    return false;
  };
  floor.loads.forEach((_, load) => place(load, new Set()));
  const chosen = new Set(cartOf);
  return {
    cartOf,
    taken: new Map(
      floor.carts.flatMap((cart, index) => (chosen.has(index) || cart.stack.length === 0 ? [] : [[index, cart.stack.length] as const])),
    ),
  };
}

function answerOf(problem: AllocationCase, floor: FloorPlan, plan: Plan, bound: number): AllocationAnswer {
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
    assignments: problem.loads.map(({ id }) => ({
      load: id,
      cart: floor.carts[cartOf.get(id)!]!.id,
      boxes: [...stacks[cartOf.get(id)!]!].reverse().map((box) => floor.serials[box]!),
    })),
    moves: plan.moves.map(({ box, from, to }) => ({ box: floor.serials[box]!, from: place(from), to: place(to) })),
    measures: { cartsTouched: new Set(plan.moves.flatMap(({ from, to }) => [from, to]).filter((each) => each >= 0)).size },
  };
}
