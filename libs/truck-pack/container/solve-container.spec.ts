import fc from 'fast-check';
import {
  type ContainerCase,
  type ContainerInput,
  makeContainerCase,
  readContainerCase,
  readContainerProblems,
  solveContainer,
  verifyContainer,
} from '#truck-pack';
import { seededRandom } from '#kernel';

function made(input: ContainerInput): ContainerCase {
  const read = makeContainerCase(input);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const solve = (problem: ContainerCase, workLimit = 30) => solveContainer(problem, { workLimit, timeLimitSeconds: 1e6, now: () => 0 });

const edge = fc.integer({ min: 20, max: 120 });
const problems = fc
  .array(fc.record({ a: edge, b: edge, c: edge, standA: fc.boolean(), standB: fc.boolean(), count: fc.integer({ min: 1, max: 20 }) }), {
    minLength: 1,
    maxLength: 8,
  })
  .map(
    (kinds): ContainerCase =>
      made({
        length: 300,
        width: 233,
        height: 220,
        boxes: kinds.map(({ a, b, c, standA, standB, count }) => ({ edges: [a, b, c], mayStand: [standA, standB, true], count })),
      }),
  );

const manyKinds = fc
  .array(fc.record({ a: edge, b: edge, c: edge, count: fc.integer({ min: 1, max: 3 }) }), { minLength: 32, maxLength: 40 })
  .map(
    (kinds): ContainerCase =>
      made({
        length: 300,
        width: 233,
        height: 220,
        boxes: kinds.map(({ a, b, c, count }) => ({ edges: [a, b, c], mayStand: [false, true, true], count })),
      }),
  );

/** Bischoff and Ratcliff (1995), class BR1, problem 1, as in the OR-Library: three kinds. */
const published = '1 1 2502505 587 233 220 3 1 108 0 76 0 30 1 40 2 110 0 43 1 25 1 33 3 92 1 81 1 55 1 39';

describe('filling one container', () => {
  it('gives a packing that the checker accepts, for random freight', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const answer = solve(problem);
        expect(verifyContainer(problem, answer)).toEqual([]);
        expect(answer.utilisation).toBeLessThanOrEqual(answer.bound + 1e-12);
      }),
      { numRuns: 25 },
    );
  });

  it('is equal for equal input and work, and never worse with more work', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const few = solve(problem, 10);
        expect(solve(problem, 10)).toEqual(few);
        expect(solve(problem, 60).utilisation).toBeGreaterThanOrEqual(few.utilisation);
      }),
      { numRuns: 10 },
    );
  });

  it('supports every box wholly where that is asked for, for random freight', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const supported: ContainerCase = { ...problem, support: 'full' };
        expect(verifyContainer(supported, solve(supported))).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('supports every box of many kinds, whose blocks are not quite solid', () => {
    fc.assert(
      fc.property(manyKinds, (problem) => {
        const supported: ContainerCase = { ...problem, support: 'full' };
        expect(verifyContainer(supported, solve(supported, 5))).toEqual([]);
        expect(verifyContainer(problem, solve(problem, 5))).toEqual([]);
      }),
      { numRuns: 4 },
    );
  });

  it('the checker refuses a box in the air or over an edge where support is wanted, and only there', () => {
    const boxes = [{ edges: [50, 50, 40], mayStand: [false, false, true], count: 2 }] as const;
    const problem = made({ length: 200, width: 100, height: 100, boxes });
    const below = { box: 0, x: 0, y: 0, z: 0, dx: 50, dy: 50, dz: 40 };
    const check = (support: 'full' | undefined, at: { x: number; z: number }) =>
      verifyContainer({ ...problem, support }, { placements: [below, { ...below, ...at }], utilisation: 0.1, bound: 1 });
    expect(check('full', { x: 0, z: 40 })).toEqual([]);
    expect(check('full', { x: 0, z: 41 }).join()).toMatch(/rests on 0 of 2500/);
    expect(check('full', { x: 1, z: 40 }).join()).toMatch(/rests on 2450 of 2500/);
    expect(check(undefined, { x: 1, z: 41 })).toEqual([]);
  });

  it('fills a container whose boxes fill it', () => {
    const answer = solve(
      made({ length: 240, width: 200, height: 200, boxes: [{ edges: [60, 50, 40], mayStand: [true, true, true], count: 80 }] }),
      200,
    );
    expect(answer.utilisation).toBe(1);
  });

  it('takes nothing that is too large, and says so by leaving it out', () => {
    const problem = made({
      length: 100,
      width: 100,
      height: 100,
      boxes: [{ edges: [120, 50, 40], mayStand: [false, false, true], count: 2 }],
    });
    expect(solve(problem)).toMatchObject({ placements: [], utilisation: 0 });
  });

  it.each([
    [
      'two boxes in one place',
      (answer: any) => (answer.placements[1] = { ...answer.placements[1], ...corner(answer.placements[0]) }),
      /overlap/,
    ],
    ['a box outside', (answer: any) => (answer.placements[0].x = 999), /not inside/],
    ['a box on its wrong side', (answer: any) => (answer.placements[0].dz = 77), /lies in a way/],
    ['one box too many', (answer: any) => answer.placements.push(...answer.placements), /are used/],
    ['a volume that is not there', (answer: any) => (answer.utilisation = 0.999), /fills/],
  ])('the checker refuses %s', (_what, corrupt, wrong) => {
    const [problem] = readContainerProblems(published) as [ContainerCase];
    const answer = structuredClone(solve(problem, 3));
    corrupt(answer);
    expect(verifyContainer(problem, answer).join()).toMatch(wrong);
  });

  it('fills at least nine tenths of a published problem with a little work', () => {
    const [problem] = readContainerProblems(published) as [ContainerCase];
    expect(solve(problem, 300).utilisation).toBeGreaterThan(0.9);
  });

  it('fills no less, with no more completions, than it did when this was written', () => {
    const random = seededRandom(9);
    const side = () => 25 + Math.floor(70 * random());
    const freight = (kinds: number, count: number) =>
      made({
        length: 300,
        width: 233,
        height: 220,
        boxes: Array.from({ length: kinds }, () => ({ edges: [side(), side(), side()], mayStand: [false, true, true], count })),
      });
    // Part filled after 40 completions, boxes free to float and wholly supported.
    const known: [ContainerCase, number, number][] = [
      [freight(3, 30), 0.881041, 0.867987],
      [freight(8, 10), 0.94051, 0.957803],
      [freight(34, 3), 0.940154, 0.917332],
      [readContainerProblems(published)[0]!, 0.90783, 0.892911],
    ];
    for (const [problem, floating, supported] of known) {
      expect(solve(problem, 40).utilisation).toBeGreaterThanOrEqual(floating);
      expect(solve({ ...problem, support: 'full' }, 40).utilisation).toBeGreaterThanOrEqual(supported);
    }
    // Here the beam has looked at all it can long before its work is used up.
    const few = made({ length: 100, width: 60, height: 60, boxes: [{ edges: [37, 31, 23], mayStand: [false, true, true], count: 14 }] });
    const answer = solve(few, 4000);
    expect(answer).toMatchObject({ stoppedBy: 'work', bound: 1 });
    expect(answer.completions).toBeLessThanOrEqual(26);
    expect(answer.utilisation).toBeGreaterThanOrEqual(0.659525);
  });

  it('reads a published problem: edges, which of them may stand, and how many', () => {
    expect(readContainerProblems(published)).toEqual([
      {
        length: 587,
        width: 233,
        height: 220,
        boxes: [
          { edges: [108, 76, 30], mayStand: [false, false, true], count: 40 },
          { edges: [110, 43, 25], mayStand: [false, true, true], count: 33 },
          { edges: [92, 81, 55], mayStand: [true, true, true], count: 39 },
        ],
      },
    ]);
    const two = `2 ${published.slice(2)} 2 77 10 10 10 1 1 5 1 5 0 5 0 1`;
    expect(readContainerProblems(two)).toHaveLength(2);
    expect(() => readContainerProblems(published.slice(0, -3))).toThrow(/word 31 is no number/);
    expect(() => readContainerProblems(published.replace('587', '0'))).toThrow(/no container problem/);
  });

  it.each<[string, object, string]>([
    ['no length', { length: 0 }, 'length'],
    ['half a millimetre', { width: 10.5 }, 'width'],
    ['more than a hundred metres', { height: 100_001 }, 'height'],
    ['fewer than no boxes', { boxes: [{ edges: [1, 1, 1], mayStand: [true, true, true], count: -1 }] }, 'boxes[0].count'],
    ['too many boxes', { boxes: [{ edges: [1, 1, 1], mayStand: [true, true, true], count: 100_001 }] }, 'boxes[0].count'],
    ['two edges', { boxes: [{ edges: [1, 1], mayStand: [true, true, true], count: 1 }] }, 'boxes[0].edges'],
    [
      'too many kinds',
      { boxes: Array.from({ length: 10_001 }, () => ({ edges: [1, 1, 1], mayStand: [true, true, true], count: 1 })) },
      'boxes',
    ],
  ])('refuses a case with %s', (_what, change, field) => {
    const largest = { edges: [100_000, 1, 1], mayStand: [true, true, true], count: 100_000 };
    const good = { length: 1, width: 100_000, height: 1, boxes: [largest, { ...largest, count: 0 }] };
    expect(readContainerCase(good).ok).toBe(true);
    const result = readContainerCase({ ...good, ...change });
    expect(result.ok ? '' : result.error[0]!.field).toContain(field);
  });

  it('refuses a file that is none', () => {
    expect(() => readContainerProblems('three problems')).toThrow(/no container problems/);
  });
});

const corner = ({ x, y, z }: { x: number; y: number; z: number }) => ({ x, y, z });
