import fc from 'fast-check';
import jstat from 'jstat';
import { Matrix, SVD } from 'ml-matrix';
import { poissonTails, smallestSpares } from '#hardware-count';
import { type HangCase, readHangCase, solveHang } from '#hang-statics';
import { bodiesAt, place } from '../../libs/hang-statics/hang-geometry.js';

/** General-purpose libraries as second opinions: jstat for distributions, ml-matrix for linear algebra. */
describe('spares beside a statistics package', () => {
  // Its powers overflow for larger means.
  const means = [0.05, 0.3, 1, 2.6, 7.5, 20, 40, 64];

  it.each(means)('gives the Poisson probabilities of jstat with mean %s', (mean) => {
    for (let n = 0; n <= mean + 6 * Math.sqrt(mean) + 4; n++)
      expect(Math.abs(poissonTails(n, mean).atMost - jstat.jStat.poisson.cdf(n, mean))).toBeLessThan(1e-9);
  });

  it.each([
    [1, 4],
    [3, 10],
    [8, 3],
  ])('gives the negative binomial of jstat with shape %i and mean %i', (shape, mean) => {
    const rate = 1000;
    const losses = { kind: 'gamma-poisson', shape, rate, pieceUses: (mean / shape) * rate } as const;
    for (const level of [0.5, 0.8, 0.9, 0.95, 0.99]) {
      const { spares, levelReached } = smallestSpares(losses, level);
      const p = rate / (rate + losses.pieceUses);
      expect(levelReached).toBeCloseTo(jstat.jStat.negbin.cdf(spares, shape, p), 9);
      if (spares > 0) expect(jstat.jStat.negbin.cdf(spares - 1, shape, p)).toBeLessThan(level);
    }
  });
});

describe('statics beside a matrix method', () => {
  const hangs = fc.record({
    tiltDownDeg: fc.integer({ min: -8, max: 12 }),
    grid: fc.record({ massKg: fc.integer({ min: 20, max: 200 }), cgBehindMm: fc.integer({ min: 0, max: 500 }) }),
    boxes: fc.array(
      fc.record({
        massKg: fc.integer({ min: 15, max: 120 }),
        frontHeightMm: fc.integer({ min: 180, max: 450 }),
        cgBehindMm: fc.integer({ min: 80, max: 380 }),
        cgBelowMm: fc.integer({ min: 60, max: 220 }),
        rearLeverMm: fc.integer({ min: 250, max: 700 }),
        splayDeg: fc.constantFrom(0, 0.5, 1, 2, 3, 5, 8),
      }),
      { minLength: 1, maxLength: 16 },
    ),
  });

  it('a truss solve of a random hang agrees with the closed form to 1e-9', () => {
    fc.assert(
      fc.property(hangs, ({ tiltDownDeg, grid, boxes }) => {
        const read = readHangCase({
          gravityMps2: 9.80665,
          dynamicFactor: 1,
          tiltDownDeg,
          grid: {
            ...grid,
            cgAboveMm: 60,
            holes: [
              { hole: 'a', behindMm: -150, aboveMm: 130 },
              { hole: 'b', behindMm: 820, aboveMm: 130 },
            ],
          },
          boxes,
          picks: ['a', 'b'].map((hole) => ({ hole, belowHookKg: 0, hoistKg: 0, chainKg: 0 })),
        });
        if (!read.ok) throw new Error(JSON.stringify(read.error));
        const answer = solveHang(read.value);
        const matrix = solveByMatrix(read.value);
        const weight = answer.massKg * 9.80665;
        const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * weight * 100);
        answer.picks.forEach((pick, index) => near(pick.reactionN, matrix.reactions[index]!));
        answer.joints.forEach((joint, index) => {
          near(joint.rearLinkN, matrix.links[index]!);
          near(joint.frontPins.xN, matrix.pins[index]!.xN);
          near(joint.frontPins.zN, matrix.pins[index]!.zN);
        });
      }),
      { numRuns: 150 },
    );
  });
});

/**
 * Equilibrium of every body at once: three equations a body; unknown are two reactions and, for each joint, the link force and the two
 * parts of the pin force. Overdetermined by one (nothing pulls sideways), solved by singular values.
 */
function solveByMatrix(problem: HangCase) {
  const tilt = problem.tiltDownDeg!;
  const bodies = bodiesAt(problem, tilt);
  const count = problem.boxes.length;
  const unknowns = 2 + 3 * count;
  const a = Matrix.zeros(3 * (count + 1), unknowns);
  const b = Matrix.zeros(3 * (count + 1), 1);
  const scale = 1000;
  const put = (body: number, unknown: number, at: { xMm: number; zMm: number }, force: { x: number; z: number }) => {
    a.set(3 * body, unknown, a.get(3 * body, unknown) + force.x);
    a.set(3 * body + 1, unknown, a.get(3 * body + 1, unknown) + force.z);
    a.set(3 * body + 2, unknown, a.get(3 * body + 2, unknown) + (at.xMm * force.z - at.zMm * force.x) / scale);
  };
  bodies.forEach(({ massKg, cg }, index) => {
    b.set(3 * index + 1, 0, massKg * problem.gravityMps2);
    b.set(3 * index + 2, 0, (cg.xMm * massKg * problem.gravityMps2) / scale);
  });
  problem.picks.forEach((pick, index) => {
    const hole = problem.grid.holes.find((each) => each.hole === pick.hole)!;
    put(0, index, place({ xMm: 0, zMm: 0 }, hole.behindMm, hole.aboveMm, (tilt * Math.PI) / 180), { x: 0, z: 1 });
  });
  problem.boxes.forEach((box, index) => {
    const { pivot, theta } = bodies[index + 1]!;
    const first = 2 + 3 * index;
    const link = place(pivot, box.rearLeverMm, 0, theta);
    const along = { x: Math.sin(theta), z: Math.cos(theta) };
    put(index + 1, first, link, along);
    put(index, first, link, { x: -along.x, z: -along.z });
    put(index + 1, first + 1, pivot, { x: 1, z: 0 });
    put(index, first + 1, pivot, { x: -1, z: 0 });
    put(index + 1, first + 2, pivot, { x: 0, z: 1 });
    put(index, first + 2, pivot, { x: 0, z: -1 });
  });
  const x = new SVD(a, { autoTranspose: true }).solve(b).to1DArray();
  return {
    reactions: x.slice(0, 2),
    links: problem.boxes.map((_, index) => x[2 + 3 * index]!),
    pins: problem.boxes.map((_, index) => ({ xN: x[3 + 3 * index]!, zN: x[4 + 3 * index]! })),
  };
}
