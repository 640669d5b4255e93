import fc from 'fast-check';
import { type PullBack, solveHang, solvePullBack, verifyPullBack } from '#hang-statics';
import { arbitraryHang, hangFrom } from '../../tests/support/random-hang.js';

const lineOf = (position: number, rest: Partial<PullBack> = {}): PullBack => ({
  position,
  behindMm: 500,
  belowMm: 150,
  anchor: { xMm: -6000, zMm: -9000 },
  chainMm: 6000,
  ...rest,
});

describe('a pull-back', () => {
  it('is in balance under the independent checker with two picks, and pulls what is given', () => {
    fc.assert(
      fc.property(arbitraryHang, fc.double({ min: 0, max: 1500, noNaN: true }), (raw, tensionN) => {
        const problem = hangFrom(raw);
        const pull = lineOf(problem.boxes.length, { tensionN });
        const answer = solvePullBack(problem, pull);
        fc.pre(answer.ok);
        expect(verifyPullBack(problem, pull, answer.value)).toEqual([]);
        expect(answer.value.tensionN).toBe(tensionN);
      }),
    );
  });

  it('brings a hang on one pick to the tilt that is wanted', () => {
    fc.assert(
      fc.property(arbitraryHang, fc.double({ min: 0.5, max: 12, noNaN: true }), (raw, more) => {
        const problem = hangFrom(raw, 1);
        const pull = lineOf(problem.boxes.length, { tiltDownDeg: solveHang(problem).tiltDownDeg + more });
        const answer = solvePullBack(problem, pull);
        fc.pre(answer.ok);
        expect(verifyPullBack(problem, pull, answer.value)).toEqual([]);
        expect(answer.value.tensionN).toBeGreaterThan(0);
        // Drawn toward the anchor, which stands behind.
        expect(answer.value.drawnAsideMm).toBeLessThan(0);
      }),
    );
  });

  it('without tension leaves the hang as it was', () => {
    const problem = hangFrom(fc.sample(arbitraryHang, { numRuns: 1, seed: 11 })[0]!);
    const answer = solvePullBack(problem, lineOf(1, { tensionN: 0 }));
    const before = solveHang(problem);
    expect(answer.ok && answer.value.picks.map((pick) => pick.alongN)).toEqual(
      before.picks.map((pick) => expect.closeTo(pick.reactionN, 6)),
    );
    expect(answer.ok && answer.value.joints).toEqual(
      before.joints.map((joint) => expect.objectContaining({ rearLinkN: expect.closeTo(joint.rearLinkN, 6) as number })),
    );
  });

  it('equals the hand sum of one box on a level line', () => {
    const problem = hangFrom(
      {
        tilt: 0,
        grid: { massKg: 1, cgBehindMm: 0, cgAboveMm: 0 },
        front: 0,
        span: 100,
        boxes: [{ massKg: 99, frontHeightMm: 300, cgBehindMm: 0, cgBelowMm: 120, rearLeverMm: 500, splayDeg: 0 }],
      },
      1,
    );
    // Hole 120 mm above the pivot. At 10 degrees nose down the line pulls level, backwards, at the box's own rear pivot line 500 behind, 150 below.
    const t = (10 * Math.PI) / 180;
    const cgX = (99 / 100) * -120 * Math.sin(t);
    const hole = { x: 120 * Math.sin(t), z: 120 * Math.cos(t) };
    const at = { x: -500 * Math.cos(t) - 150 * Math.sin(t), z: 500 * Math.sin(t) - 150 * Math.cos(t) };
    const answer = solvePullBack(problem, lineOf(1, { tiltDownDeg: 10, anchor: { xMm: -1e5, zMm: at.z }, chainMm: 0 }));
    // Moments about the hole: weight 100 kg at its distance = tension x height difference.
    const tension = (100 * 9.80665 * (cgX - hole.x)) / (at.z - hole.z);
    expect(answer.ok && answer.value.tensionN).toBeCloseTo(tension, 6);
    expect(answer.ok && answer.value.chainsInclineDeg).toBeCloseTo((Math.atan2(-tension, 100 * 9.80665) * 180) / Math.PI, 6);
  });

  it.each([
    ['an anchor on the wrong side', lineOf(4, { tiltDownDeg: 40, anchor: { xMm: 9000, zMm: -2000 } }), 'line-would-push'],
    ['a line that lifts everything', lineOf(4, { tensionN: 1e7, anchor: { xMm: 0, zMm: 9000 } }), 'line-lifts'],
    ['a box that is not there', lineOf(30, { tensionN: 10 }), 'no-such-box'],
    ['two picks and no tension', lineOf(1), 'wants-tension'],
    ['an anchor at the point itself', lineOf(1, { tensionN: 1, anchor: { xMm: -500, zMm: -150 }, chainMm: 0 }), 'anchor-at-point'],
  ])('says that it cannot hang with %s', (_what, pull, code) => {
    const raw = {
      tilt: 0,
      grid: { massKg: 80, cgBehindMm: 300, cgAboveMm: 50 },
      front: 0,
      span: 800,
      boxes: Array.from({ length: 4 }, () => ({
        massKg: 60,
        frontHeightMm: 300,
        cgBehindMm: 250,
        cgBelowMm: 150,
        rearLeverMm: 500,
        splayDeg: 0,
      })),
    };
    const answer = solvePullBack(hangFrom(raw, pull.tiltDownDeg === undefined ? 2 : 1), pull);
    expect(answer.ok ? 'hangs' : answer.reason.code).toBe(code);
  });
});
