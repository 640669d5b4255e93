import fc from 'fast-check';
import { type IntegerProgramSolver, WorkBudget } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { fewestByBreadth } from '../../../tests/support/small-floors.js';
import { BoundProgram } from '../bound/index.js';
import { type BlocksProblem, type FloorPlan, allocationCaseOf, floorPlanOf } from '../case/index.js';
import { Circles } from './circles.js';
import { type PinnedWork, pinnedWorkOf, searchPinned, settledChoice } from './index.js';
import { SafeMoves } from './progress.js';

const budgetOf = (work = 1e6) => new WorkBudget({ work, timeLimitSeconds: 1000, now: () => 0 });

/** Towers of so many blocks, and towers that are wanted of them. */
const towersOf = (blocks: number) => {
  const order = fc.shuffledSubarray(
    Array.from({ length: blocks }, (_, index) => `b${index}`),
    { minLength: blocks },
  );
  const cuts = fc.array(fc.integer({ min: 1, max: blocks - 1 }), { maxLength: 2 });
  const state = fc.tuple(order, cuts).map(([all, at]) => {
    const ends = [...new Set(at), blocks].sort((a, b) => a - b);
    return ends.map((end, index) => all.slice(ends[index - 1] ?? 0, end));
  });
  return fc.record({ start: state, goal: state });
};

/** Two boxes that wait for each other to come off the other's cart. */
const crossed: BlocksProblem = {
  start: [
    ['b0', 'b1'],
    ['b2', 'b3', 'b4'],
  ],
  goal: [
    ['b2', 'b1'],
    ['b0', 'b3', 'b4'],
  ],
};

function workOf(problem: BlocksProblem): { floor: FloorPlan; cartOf: readonly number[]; work: PinnedWork } {
  const floor = floorPlanOf(allocationCaseOf(problem));
  const cartOf = settledChoice(floor);
  const work = cartOf && pinnedWorkOf(floor, cartOf);
  if (!work) throw new Error('towers have spare carts and every block once');
  return { floor, cartOf, work };
}

/** Moves of a plan, which has to build every load. */
function built({ floor, cartOf }: ReturnType<typeof workOf>, { moves }: ReturnType<typeof searchPinned>): number {
  const stacks = floor.carts.map((cart) => [...cart.stack]);
  const loose = new Set(floor.loose);
  for (const { box, from, to } of moves!) {
    expect(from < 0 ? loose.delete(box) : stacks[from]!.pop() === box).toBe(true);
    if (to < 0) loose.add(box);
    else stacks[to]!.push(box);
  }
  floor.loads.forEach(({ kinds }, load) => expect(stacks[cartOf[load]!]!.map((box) => floor.kindOf[box])).toEqual(kinds));
  return moves!.length;
}

describe('the search for boxes that cannot stand for one another', () => {
  it('finds as few moves as trying everything', () => {
    let aside = 0;
    fc.assert(
      fc.property(towersOf(5), (problem) => {
        const made = workOf(problem);
        const answer = searchPinned(made.floor, made.work, Infinity, budgetOf());
        const { carts, ...rest } = allocationCaseOf(problem);
        const fewest = fewestByBreadth({ ...rest, carts: carts.slice(0, problem.start.length + problem.goal.length) });
        expect([built(made, answer), answer.bound]).toEqual([fewest, fewest]);
        aside += answer.bound - made.work.leastMoves;
      }),
      { numRuns: 12, seed: 3, examples: [[crossed]] },
    );
    expect(aside).toBeGreaterThan(0);
  });

  it('agrees with the integer program, which knows nothing of stacks that are dug into', async () => {
    const integerProgram: IntegerProgramSolver = await loadIntegerProgramSolver();
    fc.assert(
      fc.property(towersOf(10), (problem) => {
        const made = workOf(problem);
        const answer = searchPinned(made.floor, made.work, Infinity, budgetOf());
        expect(built(made, answer)).toBe(answer.bound);
        expect(new BoundProgram(made.floor, integerProgram, budgetOf()).solve({ share: 1 }).bound).toBe(answer.bound);
      }),
      { numRuns: 6, seed: 4 },
    );
  });

  it('cut short, has a plan and claims no more than it has proven; below a limit it finds what there is', () => {
    fc.assert(
      fc.property(towersOf(24), fc.integer({ min: 1, max: 300 }), (problem, units) => {
        const made = workOf(problem);
        const whole = searchPinned(made.floor, made.work, Infinity, budgetOf());
        const short = searchPinned(made.floor, made.work, Infinity, budgetOf(units));
        expect(short.bound).toBeLessThanOrEqual(whole.bound);
        expect(built(made, short)).toBeGreaterThanOrEqual(whole.bound);
        expect(searchPinned(made.floor, made.work, whole.bound, budgetOf())).toEqual({ bound: whole.bound, moves: undefined });
        expect(searchPinned(made.floor, made.work, whole.bound + 1, budgetOf()).moves).toHaveLength(whole.bound);
      }),
      { numRuns: 25, seed: 5 },
    );
  });

  it('counts no more circles than boxes have to be set aside', () => {
    let counted = 0;
    fc.assert(
      fc.property(towersOf(16), (problem) => {
        const { floor, work } = workOf(problem);
        const safe = new SafeMoves(work);
        const progress = safe.begin();
        safe.closeAll(progress);
        const circles = new Circles(safe).atLeast(progress, Infinity);
        expect(circles).toBeLessThanOrEqual(searchPinned(floor, work, Infinity, budgetOf()).bound - work.leastMoves);
        counted += circles;
      }),
      { numRuns: 40, seed: 6 },
    );
    expect(counted).toBeGreaterThan(5);
  });
});

describe('what the search takes on', () => {
  const read = (carts: [string[], number?][], loads: string[][], loose: string[] = [], models: Record<string, string> = {}) =>
    floorPlanOf({
      ...allocationCaseOf({ start: [], goal: [] }),
      carts: carts.map(([stack, capacity = 4], index) => ({ id: `K${index}`, capacity, stack })),
      loose,
      boxes: Object.fromEntries([...carts.flatMap(([stack]) => stack), ...loose].map((box) => [box, models[box] ?? box])),
      loads: loads.map((boxes, index) => ({
        id: `L${index}`,
        boxes: boxes.map((box) => (box.startsWith('m') ? { model: box } : { serial: box })),
      })),
    });

  it('settles the carts only where all are alike and enough of them are empty', () => {
    expect(settledChoice(read([[['a', 'b']], [[]]], [['b', 'a'], ['c']], ['c']))).toBeUndefined();
    expect(settledChoice(read([[['a', 'b']], [[]], [[]]], [['a', 'b']]))).toEqual([0]);
    expect(settledChoice(read([[['a', 'b']], [[]], [[], 3]], [['b', 'a']]))).toBeUndefined();
    expect(settledChoice(read([[['a', 'b']], [[]], [[]]], [['b', 'a']]))).toEqual([1]);
    expect(settledChoice(read([[['a', 'x']], [[]]], [['mx', 'a']], ['y'], { x: 'mx', y: 'mx' }))).toBeUndefined();
  });

  it('leaves a choice alone where a box that moves can stand for another, and takes one whose others stand on the floor', () => {
    const boxes = { x: 'mx', y: 'mx' };
    expect(pinnedWorkOf(read([[['x', 'a']], [[]]], [['mx', 'a']], ['y'], boxes), [1])).toBeUndefined();
    expect(pinnedWorkOf(read([[['a', 'b']], [[]]], [['mx', 'a']], ['x', 'y'], boxes), [1])?.leastMoves).toBe(2);
    // A box of no use above a wanted one is one move; one below it stays.
    expect(pinnedWorkOf(read([[['q', 'a', 'r']], [[]]], [['a']]), [1])?.leastMoves).toBe(2);
  });
});
