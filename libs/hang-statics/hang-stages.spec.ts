import fc from 'fast-check';
import { type HangCase, type StagePlan, bracketTilt, holeTilts, solveHang, solveStages, tiltRange, verifyHang } from '#hang-statics';
import { arbitraryHang, hangFrom } from '../../tests/support/random-hang.js';

const foursOf = (problem: HangCase, baseKg = 20): StagePlan => ({
  cartLoads: Array.from({ length: Math.ceil(problem.boxes.length / 4) }, (_, index) => ({
    firstPosition: 4 * index + 1,
    lastPosition: Math.min(problem.boxes.length, 4 * index + 4),
    baseKg,
  })),
  closedSplayDeg: 0,
  liftTiltDownDeg: 0,
});

describe('stages of building a hang', () => {
  it('are each in balance under the independent checker, on one pick and on two', () => {
    fc.assert(
      fc.property(arbitraryHang, fc.constantFrom(1 as const, 2 as const), (raw, picks) => {
        const problem = hangFrom(raw, picks);
        const { stages } = solveStages(problem, foursOf(problem));
        for (const stage of stages) expect(verifyHang(stage.problem, stage.answer)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('hang from the front pins alone with nothing in the rear link and the centre of gravity under the joint', () => {
    fc.assert(
      fc.property(arbitraryHang, fc.constantFrom(1 as const, 2 as const), (raw, picks) => {
        const problem = hangFrom(raw, picks);
        const plan = foursOf(problem);
        for (const stage of solveStages(problem, plan).stages.filter((each) => each.name === 'front pins only')) {
          const joint = stage.answer.joints[plan.cartLoads[stage.cartLoad! - 1]!.firstPosition - 1]!;
          expect(Math.abs(joint.rearLinkN)).toBeLessThan(1e-6 * joint.loadN);
          expect(joint.frontPinN).toBeCloseTo(joint.loadN / 2, 5);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('carry the boxes that are up, their extras and the base of the cart', () => {
    const problem = hangFrom({
      tilt: 2,
      grid: { massKg: 80, cgBehindMm: 300, cgAboveMm: 50 },
      front: 0,
      span: 800,
      boxes: Array.from({ length: 8 }, () => ({
        massKg: 60,
        frontHeightMm: 300,
        cgBehindMm: 250,
        cgBelowMm: 150,
        rearLeverMm: 500,
        splayDeg: 1,
      })),
    });
    const { stages, envelope } = solveStages(
      {
        ...problem,
        extras: [
          { position: 1, massKg: 9 },
          { position: 5, massKg: 9 },
        ],
      },
      foursOf(problem),
    );
    expect(stages.map((each) => [each.name, each.cartLoad, each.answer.massKg])).toEqual([
      ['front pins only', 1, 80 + 240 + 9 + 20],
      ['linked and closed', 1, 349],
      ['opened and locked', 1, 349],
      ['front pins only', 2, 80 + 480 + 18 + 20],
      ['linked and closed', 2, 598],
      ['opened and locked', 2, 598],
      ['at trim', null, 578],
    ]);
    // Straight under its hinge, the second load is linked closed: by hand, 20 + 249 kg level behind the front pivot of box 5 at 250 mm, link lever 500 mm.
    const linked = stages[4]!.answer;
    expect(linked.tiltDownDeg).toBe(0);
    // Grid joint 1 degree, boxes 2 to 4 open at 1 degree each, 5 to 8 closed: box 5 is turned by 4 degrees.
    const theta = (4 * Math.PI) / 180;
    const cg = (m: number, below: number) => m * (-250 * Math.cos(theta) - below * Math.sin(theta));
    const moment = cg(69, 150) + cg(60, 450) + cg(60, 750) + cg(80, 1050);
    expect(linked.joints[4]!.rearLinkN).toBeCloseTo((-moment * 9.80665) / 500, 6);
    // The envelope holds every stage.
    for (const { answer } of stages) {
      answer.picks.forEach((pick, index) => {
        expect(envelope.picks[index]!.mostN.value).toBeGreaterThanOrEqual(pick.reactionN);
        expect(envelope.picks[index]!.leastN.value).toBeLessThanOrEqual(pick.reactionN);
      });
      answer.joints.forEach((joint, index) => {
        expect(envelope.joints[index]!.mostLinkN.value).toBeGreaterThanOrEqual(joint.rearLinkN);
        expect(Math.abs(envelope.joints[index]!.mostFrontPinN.value)).toBeGreaterThanOrEqual(Math.abs(joint.frontPinN));
      });
    }
    expect(envelope.picks[0]!.mostN.value).toBe(stages[envelope.picks[0]!.mostN.stage]!.answer.picks[0]!.reactionN);
  });
});

describe('tilts of a hang', () => {
  it('keep the reserve on both picks inside the range and lose it outside', () => {
    fc.assert(
      fc.property(arbitraryHang, fc.double({ min: 0, max: 0.45, noNaN: true }), (raw, reserve) => {
        const problem = hangFrom(raw);
        const range = tiltRange(problem, reserve)!;
        fc.pre(Math.abs(range.fromDeg) < 85 && Math.abs(range.toDeg) < 85 && range.toDeg - range.fromDeg > 1e-6);
        const leastShare = (tiltDownDeg: number) => {
          const answer = solveHang({ ...problem, tiltDownDeg });
          return Math.min(...answer.picks.map((pick) => pick.reactionN)) / (answer.massKg * 9.80665);
        };
        expect(leastShare((range.fromDeg + range.toDeg) / 2)).toBeGreaterThanOrEqual(reserve - 1e-9);
        expect(leastShare(range.fromDeg)).toBeCloseTo(reserve, 7);
        expect(leastShare(range.toDeg)).toBeCloseTo(reserve, 7);
        const outside = 0.01 * (range.toDeg - range.fromDeg);
        expect(leastShare(range.toDeg + outside)).toBeLessThan(reserve);
      }),
    );
  });

  it('with no reserve end where a pick goes slack', () => {
    const problem = hangFrom(fc.sample(arbitraryHang, { numRuns: 1, seed: 5 })[0]!);
    const { rearSlack, frontSlack } = solveHang(problem).slackAtDeg!;
    expect(tiltRange(problem, 0)).toEqual({
      reserveShare: 0,
      fromDeg: Math.min(rearSlack, frontSlack),
      toDeg: Math.max(rearSlack, frontSlack),
    });
    expect(() => tiltRange(problem, 0.5)).toThrow(RangeError);
    expect(() => tiltRange(problem, Number.NaN)).toThrow(RangeError);
  });

  it('of single holes bracket a wanted one, and the hang on that hole comes to rest there', () => {
    fc.assert(
      fc.property(arbitraryHang, (raw) => {
        const problem = hangFrom(raw, 1);
        const tilts = holeTilts(problem);
        for (const { hole, tiltDownDeg } of tilts)
          expect(solveHang({ ...problem, picks: [{ ...problem.picks[0]!, hole }] }).tiltDownDeg).toBeCloseTo(tiltDownDeg, 10);
        const middle = (tilts[0]!.tiltDownDeg + tilts.at(-1)!.tiltDownDeg) / 2;
        const { lower, upper } = bracketTilt(problem, middle);
        expect(lower!.tiltDownDeg).toBeLessThanOrEqual(middle);
        expect(upper!.tiltDownDeg).toBeGreaterThanOrEqual(middle);
        expect(bracketTilt(problem, tilts.at(-1)!.tiltDownDeg + 1).upper).toBeNull();
      }),
    );
  });
});
