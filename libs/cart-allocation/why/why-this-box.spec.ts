import fc from 'fast-check';
import {
  type AllocationAnswer,
  type AllocationCase,
  type AnswerInHand,
  type Wish,
  readAllocationCase,
  solveAllocation,
  whyThisBox,
  whyThisCart,
} from '#cart-allocation';
import type { IntegerProgramSolver } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { fewestByBreadth, smallFloor } from '../../../tests/support/small-floors.js';

let integerProgram: IntegerProgramSolver;
beforeAll(async () => {
  integerProgram = await loadIntegerProgramSolver();
});

const limits = () => ({ timeLimitSeconds: 1e6, now: () => 0, integerProgram });
const uses: Wish = { code: 'uses', of: (serial) => Number(serial.slice(1)) };

const inHand = (answer: AllocationAnswer): AnswerInHand => ({ ...answer, cartsTouched: answer.measures.cartsTouched });

function read(input: unknown): AllocationCase {
  const result = readAllocationCase(input);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

describe('why this box, and not another', () => {
  it('says what the best plan without the box costs more: the same as trying every move', () => {
    fc.assert(
      fc.property(smallFloor, fc.nat(), (input, pick) => {
        const problem = read(input);
        const answer = solveAllocation(problem, limits());
        fc.pre(answer.status !== 'infeasible');
        const { load, boxes } = answer.assignments[pick % answer.assignments.length]!;
        const slot = 1 + (pick % boxes.length);
        const why = whyThisBox(problem, inHand(answer), { load, slot }, [uses], limits());
        const isPinned = 'serial' in problem.loads.find((each) => each.id === load)!.boxes[slot - 1]!;
        const fewest = fewestByBreadth(read({ ...input, unusable: [...input.unusable, boxes[slot - 1]!] }));
        if (isPinned) expect(why).toEqual({ code: 'pinned' });
        else if (fewest === undefined) expect(why.code).toBe('no other');
        else
          expect(why).toMatchObject({ code: 'another', movesMore: fewest - answer.boxMoves, movesMoreAtLeast: fewest - answer.boxMoves });
        if (why.code === 'another') expect(why.other).not.toBe(boxes[slot - 1]);
      }),
      { numRuns: 50 },
    );
  });

  it('says what the best plan on another cart costs more: the same as trying every move', () => {
    fc.assert(
      fc.property(smallFloor, fc.nat(), (input, pick) => {
        const problem = read(input);
        const answer = solveAllocation(problem, limits());
        fc.pre(answer.status !== 'infeasible');
        const { load, cart } = answer.assignments[pick % answer.assignments.length]!;
        const why = whyThisCart(problem, inHand(answer), load, [uses], limits());
        const loads = input.loads.map((each) => (each.id === load ? { ...each, notOn: [cart] } : each));
        const fewest = fewestByBreadth(read({ ...input, loads }));
        if (fewest === undefined) expect(why.code).toBe('no other');
        else
          expect(why).toMatchObject({ code: 'another', movesMore: fewest - answer.boxMoves, movesMoreAtLeast: fewest - answer.boxMoves });
        if (why.code === 'another') expect(why.other).not.toBe(cart);
      }),
      { numRuns: 50 },
    );
  });

  it('counts the wishes where another box is as few moves', () => {
    const problem = read({
      carts: [{ id: 'K1', capacity: 2, stack: [] }],
      loose: ['S1', 'S5'],
      boxes: { S1: 'A', S5: 'A' },
      loads: [{ id: 'L', boxes: [{ model: 'A' }] }],
    });
    const prefer = { boxRank: uses.of, loadRank: () => 0 };
    const answer = solveAllocation(problem, { ...limits(), prefer });
    expect(answer.assignments[0]!.boxes).toEqual(['S1']);
    expect(whyThisBox(problem, inHand(answer), { load: 'L', slot: 1 }, [uses], { ...limits(), prefer })).toEqual({
      code: 'another',
      other: 'S5',
      movesMore: 0,
      movesMoreAtLeast: 0,
      cartsMore: 0,
      wishesMore: [{ code: 'uses', more: 4 }],
      stoppedBy: 'proof',
    });
  });

  it('names what would be short where there is no other', () => {
    const problem = read({
      carts: [{ id: 'K1', capacity: 2, stack: ['S1'] }],
      boxes: { S1: 'A' },
      loads: [{ id: 'L', boxes: [{ model: 'A' }] }],
    });
    const answer = solveAllocation(problem, limits());
    expect(whyThisBox(problem, inHand(answer), { load: 'L', slot: 1 }, [], limits())).toEqual({
      code: 'no other',
      short: [{ model: 'A', missing: 1, code: 'too few' }],
      cartsShort: null,
    });
    expect(whyThisCart(problem, inHand(answer), 'L', [], limits())).toMatchObject({ code: 'no other', cartsShort: { load: 'L' } });
  });
});
