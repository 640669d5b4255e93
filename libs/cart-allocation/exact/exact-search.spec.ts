import fc from 'fast-check';
import { WorkBudget } from '#kernel';
import { fewestByBreadth, smallFloor } from '../../../tests/support/small-floors.js';
import { type FloorPlan, floorPlanOf, readAllocationCase } from '../case/index.js';
import { searchExactly } from './exact-search.js';

const budget = (work = 1e6) => new WorkBudget({ work, timeLimitSeconds: 1000, now: () => 0 });
const most = 12;

const floors = smallFloor.map((written) => {
  const read = readAllocationCase(written);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
});

/** Carries moves out on the floor, and says whether every load then stands on its cart, kind by kind, and which moves could not be made. */
function standsAfter(floor: FloorPlan, { cartOf, moves }: NonNullable<ReturnType<typeof searchExactly>['found']>): boolean {
  const stacks = floor.carts.map((cart) => [...cart.stack]);
  const loose = new Set(floor.loose);
  for (const { box, from, to } of moves) {
    if (from < 0 ? !loose.delete(box) : stacks[from]!.pop() !== box) return false;
    if (to < 0) loose.add(box);
    else stacks[to]!.push(box);
  }
  return (
    new Set(cartOf).size === floor.loads.length &&
    floor.loads.every((load, index) => stacks[cartOf[index]!]!.map((box) => floor.kindOf[box]).join() === load.kinds.join())
  );
}

describe('the exact search', () => {
  it('finds as few moves as trying everything, from any bound below, and its moves build the loads', () => {
    let found = 0;
    fc.assert(
      fc.property(floors, (problem) => {
        const fewest = fewestByBreadth(problem);
        fc.pre(fewest !== undefined && fewest <= most && problem.loads.length > 0);
        const floor = floorPlanOf(problem);
        const answer = searchExactly(floor, 0, most + 1, budget());
        expect(answer.bound).toBe(fewest);
        expect(answer.found!.moves).toHaveLength(fewest);
        expect(standsAfter(floor, answer.found!)).toBe(true);
        if (fewest > 0) found++;
        // Nothing below the fewest is found, and that is proven.
        expect(searchExactly(floor, 0, fewest, budget())).toEqual({ bound: fewest, found: undefined });
        expect(searchExactly(floor, fewest, fewest + 1, budget()).found?.moves).toHaveLength(fewest);
      }),
      { numRuns: 80, seed: 5 },
    );
    expect(found).toBeGreaterThan(25);
  });

  it('cut short, claims no more than it has proven', () => {
    fc.assert(
      fc.property(floors, fc.integer({ min: 1, max: 60 }), (problem, work) => {
        const fewest = fewestByBreadth(problem);
        fc.pre(fewest !== undefined && fewest > 0 && problem.loads.length > 0);
        const floor = floorPlanOf(problem);
        const { bound, found } = searchExactly(floor, 0, most + 1, budget(work));
        expect(bound).toBeLessThanOrEqual(fewest);
        if (found) expect(found.moves).toHaveLength(fewest);
      }),
      { numRuns: 50, seed: 5 },
    );
  });
});
