import fc from 'fast-check';
import {
  type ContainerCase,
  type ContainerInput,
  makeContainerCase,
  readContainerProblems,
  solveContainer,
  verifyContainer,
} from '#truck-pack';

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

  it('refuses a file that is none', () => {
    expect(() => readContainerProblems('three problems')).toThrow(/no container problems/);
  });
});

const corner = ({ x, y, z }: { x: number; y: number; z: number }) => ({ x, y, z });
