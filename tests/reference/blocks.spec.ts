import { type BlocksProblem, allocationCaseOf, readBlocksProblem, solveAllocation, verifyAllocation } from '#cart-allocation';
import { loadIntegerProgramSolver } from '#runtime';

/**
 * Problems of the International Planning Competition 2000, blocks domain (public collection AI-Planning/classical-domains), restated as
 * towers from the top down, with their published shortest plans in moves (half the steps of the four-operator version).
 */
const problems: readonly (BlocksProblem & { readonly name: string; readonly shortest: number })[] = [
  { name: '4-0', start: [['c'], ['a'], ['b'], ['d']], goal: [['d', 'c', 'b', 'a']], shortest: 3 },
  { name: '5-0', start: [['d'], ['c', 'e', 'b', 'a']], goal: [['a', 'e', 'b', 'd', 'c']], shortest: 6 },
  {
    name: '6-0',
    start: [
      ['d', 'a', 'c'],
      ['f', 'e', 'b'],
    ],
    goal: [['c', 'b', 'a', 'e', 'f', 'd']],
    shortest: 6,
  },
  { name: '7-0', start: [['e', 'g', 'b', 'a', 'f', 'c', 'd']], goal: [['a', 'g', 'd', 'b', 'c', 'f', 'e']], shortest: 10 },
  { name: '8-0', start: [['a', 'g', 'e'], ['b'], ['c'], ['d', 'h', 'f']], goal: [['d', 'f', 'e', 'h', 'c', 'a', 'g', 'b']], shortest: 9 },
  {
    name: '9-0',
    start: [['c'], ['f', 'g', 'e', 'a', 'i', 'd', 'h', 'b']],
    goal: [['g', 'd', 'b', 'c', 'a', 'i', 'f', 'e', 'h']],
    shortest: 15,
  },
  {
    name: '10-0',
    start: [['c', 'e', 'j', 'b', 'g', 'h', 'a', 'd', 'i'], ['f']],
    goal: [['d', 'c', 'f', 'j', 'e', 'h', 'b', 'a', 'g', 'i']],
    shortest: 17,
  },
  {
    name: '12-0',
    start: [['h', 'a', 'g', 'k', 'e', 'b', 'd', 'i', 'c'], ['j'], ['l', 'f']],
    goal: [['i', 'c', 'b', 'l', 'd', 'j', 'e', 'k', 'f', 'a', 'h', 'g']],
    shortest: 17,
  },
];

describe('box moves against blocks-world problems with known shortest plans', () => {
  let solve: (problem: BlocksProblem) => ReturnType<typeof solveAllocation>;
  beforeAll(async () => {
    const integerProgram = await loadIntegerProgramSolver();
    solve = (problem) => solveAllocation(allocationCaseOf(problem), { timeLimitSeconds: 1e6, now: () => 0, integerProgram });
  });

  it.each(problems.map((each) => [each.name, each.shortest, each] as const))(
    'problem %s takes %i moves, proved',
    (_name, shortest, problem) => {
      const answer = solve(problem);
      expect(verifyAllocation(allocationCaseOf(problem), answer)).toEqual([]);
      expect(answer).toMatchObject({ status: 'optimal', boxMoves: shortest, bound: shortest });
    },
  );

  it('reads the notation of the competition', () => {
    expect(
      readBlocksProblem(`(define (problem BLOCKS-4-0) (:domain BLOCKS) (:objects D B A C )
        (:INIT (CLEAR C) (CLEAR A) (CLEAR B) (CLEAR D) (ONTABLE C) (ONTABLE A) (ONTABLE B) (ONTABLE D) (HANDEMPTY))
        (:goal (AND (ON D C) (ON C B) (ON B A))))`),
    ).toEqual({ start: expect.arrayContaining([['c'], ['a'], ['b'], ['d']]), goal: [['d', 'c', 'b', 'a']] });
    expect(() => readBlocksProblem('(define (domain other))')).toThrow(/no blocks problem/);
  });
});
