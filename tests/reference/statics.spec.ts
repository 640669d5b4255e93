import { type HangCase, readHangCase, solveHang } from '#hang-statics';
import { together } from '../../libs/hang-statics/hang-geometry.js';

/*
 * Published examples of two supports, as hangs: the beam is the grid (its own weight at its own centre of gravity), what stands on it is a
 * box whose centre of gravity lies where the load acts; supports are holes. Front is the left of the book.
 */
interface Support {
  readonly massKg: number;
  readonly atMm: number;
}

function hangOf(beam: Support, loads: readonly Support[], holesMm: readonly [number, number], gravityMps2: number): HangCase {
  const read = readHangCase({
    gravityMps2,
    dynamicFactor: 1,
    tiltDownDeg: 0,
    grid: {
      massKg: beam.massKg,
      cgBehindMm: beam.atMm,
      cgAboveMm: 0,
      holes: holesMm.map((behindMm, index) => ({ hole: 'AB'[index]!, behindMm, aboveMm: 0 })),
    },
    boxes: loads.map(({ massKg, atMm }) => ({
      massKg,
      frontHeightMm: 100,
      cgBehindMm: atMm,
      cgBelowMm: 50,
      rearLeverMm: 100,
      splayDeg: 0,
    })),
    picks: ['A', 'B'].map((hole) => ({ hole, belowHookKg: 0, hoistKg: 0, chainKg: 0 })),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const reactions = (problem: HangCase) => solveHang(problem).picks.map((pick) => pick.reactionN);
const nothing: Support = { massKg: 1e-9, atMm: 0 };
/** The mass that weighs so many newtons in a world of g = 10 m/s2. */
const newtons = (force: number): number => force / 10;

describe('statics against published examples', () => {
  it('ST1: a pole held in the middle of two hands (OpenStax College Physics, sec. 9.4)', () => {
    const [left, right] = reactions(hangOf({ massKg: 5, atMm: 450 }, [nothing], [0, 900], 9.8));
    expect(left).toBeCloseTo(24.5, 1);
    expect(right).toBeCloseTo(24.5, 1);
  });

  it('ST2: the reaction reverses where the centre of gravity lies outside (OpenStax College Physics, ch. 9, problem 18)', () => {
    const problem = hangOf({ massKg: 5, atMm: 0 }, [nothing], [2000, 2700], 9.8);
    const [left, right] = reactions(problem);
    expect(left).toBeCloseTo(189, 0);
    expect(right).toBeCloseTo(-140, 0);
    expect(solveHang(problem).findings.map((each) => each.code)).toContain('cannot-hang-like-this');
  });

  it('ST3: a scaffold of 500 N on two ropes, 800 N at 1 m of 4 m (textbook problem, seen in a question-and-answer page)', () => {
    const [near, far] = reactions(hangOf({ massKg: newtons(500), atMm: 2000 }, [{ massKg: newtons(800), atMm: 1000 }], [0, 4000], 10));
    expect(near).toBeCloseTo(850, 4);
    expect(far).toBeCloseTo(450, 4);
  });

  it('ST4: a scaffold of 210 N and 3.30 m, 690 N at 2.30 m (textbook problem, seen in a question-and-answer page)', () => {
    const [a, b] = reactions(hangOf({ massKg: newtons(210), atMm: 1650 }, [{ massKg: newtons(690), atMm: 2300 }], [0, 3300], 10));
    expect(b).toBeCloseTo(585.91, 2);
    expect(a).toBeCloseTo(314.09, 2);
  });

  it('ST5: 60 kg over 5 m, 80 kg at 1.5 m, g = 9.8 (textbook problem, seen in a question-and-answer page)', () => {
    const [near, far] = reactions(hangOf({ massKg: 60, atMm: 2500 }, [{ massKg: 80, atMm: 1500 }], [0, 5000], 9.8));
    expect(near).toBeCloseTo(842.8, 1);
    expect(far).toBeCloseTo(529.2, 1);
  });

  it('ST6: a plank of 2,500 N on ropes at 1 and 5 m that bear 2,100 N: 800 N may stand 0.25 m beyond the rope (textbook inequality)', () => {
    const atRope = (beyondMm: number) =>
      reactions(hangOf({ massKg: newtons(2500), atMm: 3000 }, [{ massKg: newtons(800), atMm: 5000 + beyondMm }], [1000, 5000], 10))[1]!;
    expect(atRope(250)).toBeCloseTo(2100, 6);
    expect(atRope(249)).toBeLessThan(2100);
    expect(atRope(251)).toBeGreaterThan(2100);
  });

  it('ST7: point, uniform and triangular load with an overhang (textbook companion 3886, Ex 3.23)', () => {
    const [a, b] = reactions(
      hangOf(
        { massKg: newtons(30_000), atMm: 1000 },
        [
          { massKg: newtons(72_000), atMm: 3500 },
          { massKg: newtons(30_000), atMm: 5500 },
        ],
        [0, 5000],
        10,
      ),
    );
    expect(a).toBeCloseTo(42_600, 3);
    expect(b).toBeCloseTo(89_400, 3);
  });

  it('ST8: a metre stick in balance on one support (OpenStax University Physics, Ex. 12.3; lever arms from memory)', () => {
    const read = readHangCase({
      gravityMps2: 9.8,
      dynamicFactor: 1,
      grid: { massKg: 0.15, cgBehindMm: 500, cgAboveMm: 0, holes: [{ hole: 'A', behindMm: 700, aboveMm: 10 }] },
      boxes: [
        { massKg: 0.05, atMm: 0 },
        { massKg: 0.075, atMm: 300 },
        { massKg: 0.95 / 3, atMm: 1000 },
      ].map(({ massKg, atMm }) => ({ massKg, frontHeightMm: 1e-6, cgBehindMm: atMm, cgBelowMm: 0, rearLeverMm: 100, splayDeg: 0 })),
      picks: [{ hole: 'A', belowHookKg: 0, hoistKg: 0, chainKg: 0 }],
    });
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const answer = solveHang(read.value);
    expect(answer.tiltDownDeg).toBeCloseTo(0, 4);
    expect(answer.picks[0]!.reactionN).toBeCloseTo(5.8, 2);
  });

  it('ST9: the axles of a car of 961 kg (textbook problem, seen in a question-and-answer page)', () => {
    const [front, rear] = reactions(hangOf({ massKg: 961, atMm: 615 }, [nothing], [0, 3270], 9.81));
    expect(rear).toBeCloseTo(1773.0, 0);
    expect(front).toBeCloseTo(7654.4, 0);
  });

  it('ST10: the axles of a loaded truck of 9,155 kg (textbook problem; the base is 2.93 m)', () => {
    const [front, rear] = reactions(hangOf({ massKg: 9155, atMm: 2300 }, [nothing], [0, 2930], 9.8));
    expect(front).toBeCloseTo(19_291, -1);
    expect(rear).toBeCloseTo(70_428, -1);
  });

  it('ST11: the centroid of a plate with six holes (textbook companion 3862, Ex 4.9)', () => {
    const hole = -(Math.PI / 4) * 21.5 ** 2;
    const parts = [
      { area: 160 * 280, x: 140, y: 80 },
      { area: (280 * 40) / 2, x: 186.667, y: 173.333 },
      ...[70, 140, 210, 70, 140, 210].map((x, index) => ({ area: hole, x, y: [50, 50, 50, 120, 130, 140][index]! })),
    ];
    const { massKg, cg } = together(parts.map(({ area, x, y }) => ({ massKg: area, cg: { xMm: x, zMm: y } })) as never);
    expect(massKg).toBeCloseTo(48_221.7, 1);
    expect(cg.xMm).toBeCloseTo(145.42, 1);
    expect(cg.zMm).toBeCloseTo(90.39, 1);
  });
});
