import fc from 'fast-check';
import { Matrix, SVD } from 'ml-matrix';
import {
  type HangCase,
  type HangStage,
  type JointClosing,
  type PullBack,
  type StagePlan,
  bracketTilt,
  holeTilts,
  solveHang,
  solveStages,
  tiltRange,
  verifyStage,
} from '#hang-statics';
import { arbitraryHang, hangFrom } from '../../tests/support/random-hang.js';

const swinging: JointClosing = { gridJoint: 'on the ground', cartJoints: 'swung back and driven down' };
const hinging: JointClosing = { gridJoint: 'in the air', cartJoints: 'swung back and driven down' };
const matching: JointClosing = { gridJoint: 'on the ground', cartJoints: 'on the floor at matched tilt' };
const boxing: JointClosing = { gridJoint: 'on the ground', cartJoints: 'box by box' };

const foursOf = (problem: HangCase, baseKg = 20, closing: JointClosing = swinging): StagePlan => ({
  cartLoads: Array.from({ length: Math.ceil(problem.boxes.length / 4) }, (_, index) => ({
    firstPosition: 4 * index + 1,
    lastPosition: Math.min(problem.boxes.length, 4 * index + 4),
    baseKg,
  })),
  closedSplayDeg: 0,
  liftTiltDownDeg: 0,
  closing,
});

const turn = (x: number, z: number, deg: number): readonly [number, number] => {
  const t = (deg * Math.PI) / 180;
  return [x * Math.cos(t) + z * Math.sin(t), -x * Math.sin(t) + z * Math.cos(t)];
};

/**
 * Every body of a stage in balance by itself, solved as one set of linear equations: three a body; unknown are two forces of the pins and one of the link
 * at each joint, and one along the chain of each pick. Largest force that the answer and what is left over differ by, as a share of the weight.
 */
function offFromMatrix({ problem, answer, held }: HangStage): number {
  const g = problem.gravityMps2;
  const n = problem.boxes.length;
  const masses = [problem.grid.massKg, ...problem.boxes.map((each) => each.massKg)];
  for (const { position, massKg } of problem.extras) masses[position]! += massKg;
  let [deg, px, pz] = [answer.tiltDownDeg, 0, 0];
  const rows: number[][] = Array.from({ length: 3 * n + 3 }, () => new Array<number>(3 * n + problem.picks.length).fill(0));
  const known = new Array<number>(3 * n + 3).fill(0);
  const put = (body: number, column: number, [x, z]: readonly [number, number], [fx, fz]: readonly [number, number]) => {
    rows[3 * body]![column]! += fx;
    rows[3 * body + 1]![column]! += fz;
    rows[3 * body + 2]![column]! += (x * fz - z * fx) / 1000;
  };
  const load = (body: number, [x, z]: readonly [number, number], [fx, fz]: readonly [number, number]) => {
    known[3 * body]! -= fx;
    known[3 * body + 1]! -= fz;
    known[3 * body + 2]! -= (x * fz - z * fx) / 1000;
  };
  const weight = masses.reduce((sum, each) => sum + each * g, 0);
  // Chains lie along what balances weight and line together.
  const pull = held?.hang.line;
  const aside = pull ? -pull.xN / (weight - pull.zN) : 0;
  const from = (behind: number, above: number): readonly [number, number] => {
    const [x, z] = turn(-behind, above, deg);
    return [px + x, pz + z];
  };
  load(0, from(problem.grid.cgBehindMm, problem.grid.cgAboveMm), [0, -masses[0]! * g]);
  problem.picks.forEach((pick, index) => {
    const hole = problem.grid.holes.find((each) => each.hole === pick.hole)!;
    put(0, 3 * n + index, from(hole.behindMm, hole.aboveMm), [aside / Math.hypot(1, aside), 1 / Math.hypot(1, aside)]);
  });
  problem.boxes.forEach((box, index) => {
    deg += box.splayDeg;
    const [pin, link] = [from(0, 0), from(box.rearLeverMm, 0)];
    for (const [body, sign] of [
      [index + 1, 1],
      [index, -1],
    ] as const) {
      put(body, 3 * index, pin, [sign, 0]);
      put(body, 3 * index + 1, pin, [0, sign]);
      const along = turn(0, sign, deg);
      put(body, 3 * index + 2, link, along);
    }
    load(index + 1, from(box.cgBehindMm, -box.cgBelowMm), [0, -masses[index + 1]! * g]);
    const foot = from(0, -box.frontHeightMm);
    if (pull && held?.pull.position === index + 1) load(index + 1, from(held.pull.behindMm, -held.pull.belowMm), [pull.xN, pull.zN]);
    [px, pz] = foot;
  });
  const A = new Matrix(rows);
  const b = Matrix.columnVector(known);
  const x = new SVD(A, { autoTranspose: true }).solve(b);
  const left = Matrix.sub(A.mmul(x), b);
  const found = x.to1DArray();
  const off = [
    ...left.to1DArray(),
    ...answer.picks.map((pick, index) => pick.reactionN - found[3 * n + index]!),
    ...answer.joints.flatMap((joint, index) => [
      joint.frontPins.xN - found[3 * index]!,
      joint.frontPins.zN - found[3 * index + 1]!,
      joint.rearLinkN - found[3 * index + 2]!,
    ]),
  ];
  return Math.max(...off.map(Math.abs)) / weight;
}

/** A line from the middle of the lowest box to the floor behind: a twentieth of the weight on two picks, a degree more nose down on one. */
function lineOf(problem: HangCase): PullBack {
  const answer = solveHang(problem);
  const last = problem.boxes.length;
  return {
    position: last,
    behindMm: 100,
    belowMm: problem.boxes[last - 1]!.frontHeightMm / 2,
    anchor: { xMm: -8000, zMm: -14_000 },
    chainMm: 3000,
    ...(problem.picks.length === 2 ? { tensionN: (answer.massKg * 9.80665) / 20 } : { tiltDownDeg: answer.tiltDownDeg + 1 }),
  };
}

describe('stages of building a hang', () => {
  it.each([
    ['swung back and driven down', swinging],
    ['closed in the air from the grid on', hinging],
    ['closed on the floor at matched tilt', matching],
    ['box by box', boxing],
  ])('%s are each in balance under the independent checker and by a matrix of all bodies, on one pick and on two', (_what, closing) => {
    let judged = 0;
    const names = new Set<string>();
    fc.assert(
      fc.property(arbitraryHang, fc.constantFrom(1 as const, 2 as const), (raw, picks) => {
        const problem = hangFrom(raw, picks);
        const plan = { ...foursOf(problem, 20, closing), comesDown: true, pull: lineOf(problem) };
        for (const stage of solveStages(problem, plan).stages) {
          expect(verifyStage(stage)).toEqual([]);
          expect(offFromMatrix(stage)).toBeLessThan(1e-6);
          judged++;
          names.add(stage.name);
        }
      }),
      { numRuns: 30, seed: 12 },
    );
    expect(judged).toBeGreaterThan(120);
    for (const name of ['line half taken up', 'line taken up', ...(closing.cartJoints === swinging.cartJoints ? ['rear link drawn'] : [])])
      expect(names).toContain(name);
  });

  it('join the grid on the ground without a hinge, and hinge only the joints between carts', () => {
    const problem = hangFrom(fc.sample(arbitraryHang, { numRuns: 40, seed: 5 }).find((each) => each.boxes.length > 8)!);
    const names = (closing: JointClosing, load: number) =>
      solveStages(problem, foursOf(problem, 20, closing))
        .stages.filter((each) => each.cartLoad === load)
        .map((each) => each.name);
    expect(names(swinging, 1)).toEqual(['linked and closed', 'opened and locked', 'base off']);
    expect(names(swinging, 2)).toEqual([
      'front pins only',
      'opened on front pins',
      'swung back',
      'driven down',
      'linked and closed',
      'opened and locked',
    ]);
    expect(names(hinging, 1)[0]).toBe('front pins only');
    expect(names(matching, 2)).toEqual(['linked and closed', 'opened and locked', 'base off']);
    expect(names(boxing, 2)).toEqual(['box joined', 'box joined', 'box joined', 'box joined']);
  });

  it('hang from the front pins alone with nothing in the rear link and the centre of gravity under the joint', () => {
    fc.assert(
      fc.property(arbitraryHang, fc.constantFrom(1 as const, 2 as const), (raw, picks) => {
        const problem = hangFrom(raw, picks);
        const plan = foursOf(problem);
        for (const stage of solveStages(problem, plan).stages.filter((each) => / front pins|^front pins/.test(each.name))) {
          const joint = stage.answer.joints[plan.cartLoads[stage.cartLoad! - 1]!.firstPosition - 1]!;
          expect(Math.abs(joint.rearLinkN)).toBeLessThan(1e-6 * joint.loadN);
          expect(joint.frontPinN).toBeCloseTo(joint.loadN / 2, 5);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('are swung back by a level force at the foot that leaves the rear link empty: two equal boxes by hand', () => {
    const problem = hangFrom({
      tilt: 0,
      grid: { massKg: 80, cgBehindMm: 300, cgAboveMm: 50 },
      front: 0,
      span: 800,
      boxes: Array.from({ length: 2 }, () => ({
        massKg: 50,
        frontHeightMm: 300,
        cgBehindMm: 200,
        cgBelowMm: 150,
        rearLeverMm: 500,
        splayDeg: 0,
      })),
    });
    const plan = {
      ...foursOf(problem, 10),
      cartLoads: [
        { firstPosition: 1, lastPosition: 1, baseKg: 10 },
        { firstPosition: 2, lastPosition: 2, baseKg: 10 },
      ],
    };
    const stage = solveStages(problem, plan).stages.find((each) => each.name === 'swung back')!;
    // 60 kg at 200 mm behind the pins, held 300 mm below them: 60 x 9.80665 x 200 / 300 N to the rear.
    expect(stage.swung!.forceN).toBeCloseTo((-60 * 9.80665 * 200) / 300, 6);
    expect(stage.swung!.turnedDeg).toBeCloseTo((Math.atan2(200, 150) * 180) / Math.PI, 6);
    expect(stage.answer.joints[1]!.rearLinkN).toBeCloseTo(0, 6);
    // Driven down the picks carry grid and first box alone.
    const down = solveStages(problem, plan).stages.find((each) => each.name === 'driven down')!;
    expect(down.answer.massKg).toBe(130);
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
      ['linked and closed', 1, 80 + 240 + 9 + 20],
      ['opened and locked', 1, 349],
      ['base off', 1, 329],
      ['front pins only', 2, 80 + 480 + 18 + 20],
      ['opened on front pins', 2, 598],
      ['swung back', 2, 598],
      ['driven down', 2, 329],
      ['linked and closed', 2, 598],
      ['opened and locked', 2, 598],
      ['base off', 2, 578],
      ['at trim', null, 578],
    ]);
    // Linked with the joint of the two loads closed and its boxes open at 1 degree each: by hand about the front pivot of box 5, link lever 500 mm.
    const linked = stages[7]!.answer;
    expect(linked.tiltDownDeg).toBe(0);
    // Grid joint 1 degree, boxes 2 to 4 open at 1 degree each, joint 5 closed: box 5 is turned by 4 degrees, the next by 5, 6 and 7.
    let [x, moment] = [0, 0];
    [69, 60, 60, 80].forEach((kg, index) => {
      const theta = ((4 + index) * Math.PI) / 180;
      moment += kg * (x - 250 * Math.cos(theta) - 150 * Math.sin(theta));
      x -= 300 * Math.sin(theta);
    });
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

  it('of tilts looks at the holes of the picks alone', () => {
    fc.assert(
      fc.property(arbitraryHang, (raw) => {
        const problem = hangFrom(raw);
        const unused = { hole: 'spare', behindMm: raw.front + 2 * raw.span, aboveMm: 300 };
        const more = { ...problem, grid: { ...problem.grid, holes: [unused, ...problem.grid.holes] } };
        expect(tiltRange(more, 0.1)).toEqual(tiltRange(problem, 0.1));
      }),
      { numRuns: 30 },
    );
  });
});
