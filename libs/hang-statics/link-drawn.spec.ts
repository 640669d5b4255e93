import { bodiesAt, linkDrawn, readHangCase, solveHang, together, verifyHang } from './index.js';

const g = 9.80665;

/** Boxes of one front height and splay below a grid, the lower ones swinging. */
function hang(boxes: readonly { readonly massKg: number; readonly cgBelowMm: number; readonly splayDeg: number }[], tiltDownDeg = 2) {
  const read = readHangCase({
    gravityMps2: g,
    dynamicFactor: 1.25,
    tiltDownDeg,
    grid: {
      massKg: 90,
      cgBehindMm: 300,
      cgAboveMm: 70,
      holes: [
        { hole: 'front', behindMm: -10, aboveMm: 130 },
        { hole: 'rear', behindMm: 600, aboveMm: 130 },
      ],
    },
    boxes: boxes.map((each) => ({ ...each, frontHeightMm: 340, cgBehindMm: 262, rearLeverMm: 500 })),
    picks: ['front', 'rear'].map((hole) => ({ hole, belowHookKg: 2, hoistKg: 64, chainKg: 25 })),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.error[0]));
  return read.value;
}

const masses = [79, 62, 62, 62, 79, 62, 88];
const seven = hang(masses.map((massKg, index) => ({ massKg, cgBelowMm: 168, splayDeg: index % 3 })));

/**
 * The same swing stepped through in time (Runge and Kutta's classical method; equation of a physical pendulum, any textbook of mechanics): bodies as masses
 * at their centres about the pins, let go at rest. The greatest that they pull their pins with together, in newtons.
 */
function steppedPullN(held: readonly { readonly massKg: number; readonly x: number; readonly z: number }[]): number {
  const inertia = held.reduce((sum, { massKg, x, z }) => sum + massKg * (x * x + z * z), 0);
  const at = ({ x, z }: { x: number; z: number }, a: number) => ({
    x: x * Math.cos(a) - z * Math.sin(a),
    z: x * Math.sin(a) + z * Math.cos(a),
  });
  const turning = (a: number) => held.reduce((sum, each) => sum - each.massKg * g * at(each, a).x, 0) / inertia;
  const pull = (a: number, w: number) => {
    const acceleration = turning(a);
    const [h, v] = held.reduce(
      ([sumX, sumZ], each) => {
        const { x, z } = at(each, a);
        // What keeps each on its circle, and its weight.
        return [sumX + each.massKg * (-acceleration * z - w * w * x), sumZ + each.massKg * (acceleration * x - w * w * z + g)];
      },
      [0, 0],
    );
    return Math.hypot(h, v);
  };
  let [a, w, most] = [0, 0, 0];
  const step = 1e-4;
  for (let round = 0; round < 30_000; round++) {
    const k1 = [w, turning(a)] as const;
    const k2 = [w + (step / 2) * k1[1], turning(a + (step / 2) * k1[0])] as const;
    const k3 = [w + (step / 2) * k2[1], turning(a + (step / 2) * k2[0])] as const;
    const k4 = [w + step * k3[1], turning(a + step * k3[0])] as const;
    a += (step / 6) * (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0]);
    w += (step / 6) * (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1]);
    most = Math.max(most, pull(a, w));
  }
  return most;
}

describe('a rear link that is drawn while its load hangs', () => {
  it('lets the load pull as much as one that is stepped through its swing', () => {
    const drawn = linkDrawn(seven, 4);
    const all = bodiesAt(seven, 2);
    const pins = all[4]!.pivot;
    const held = all.slice(4).map(({ massKg, cg }) => ({ massKg, x: (cg.xMm - pins.xMm) / 1000, z: (cg.zMm - pins.zMm) / 1000 }));
    const { pivot, cg, massKg } = { pivot: bodiesAt(drawn.problem, 2)[4]!.pivot, ...together(bodiesAt(drawn.problem, 2).slice(4)) };
    expect(cg.xMm).toBeCloseTo(pivot.xMm, 6);
    expect(massKg * g).toBeCloseTo(steppedPullN(held), 2);
    expect(drawn.pullsTimes).toBeCloseTo(massKg / 291, 9);
    expect(drawn.turnsDeg).toBeGreaterThan(15);
  });

  it('of one box is the pendulum of every textbook: its weight times 3 - 2 cos a', () => {
    const one = hang([
      { massKg: 62, cgBelowMm: 168, splayDeg: 0 },
      { massKg: 62, cgBelowMm: 454, splayDeg: 0 },
    ]);
    const drawn = linkDrawn(one, 2);
    expect(drawn.turnsDeg).toBeCloseTo((Math.atan2(262, 454) * 180) / Math.PI + 2, 9);
    expect(drawn.pullsTimes).toBeCloseTo(3 - 2 * Math.cos((drawn.turnsDeg * Math.PI) / 180), 9);
    const [, pinned] = solveHang(drawn.problem).joints;
    expect(pinned!.rearLinkN).toBeCloseTo(0, 6);
    expect(2 * pinned!.frontPinN).toBeCloseTo(62 * g * drawn.pullsTimes, 6);
  });

  it('of a load that hangs straight below its pins kicks nothing', () => {
    const plumb = hang([{ massKg: 62, cgBelowMm: 168, splayDeg: 0 }], (-Math.atan2(262, 168) * 180) / Math.PI);
    const drawn = linkDrawn(plumb, 1);
    expect(drawn.turnsDeg).toBeCloseTo(0, 9);
    expect(drawn.pullsTimes).toBeCloseTo(1, 12);
  });

  it('stands before the checker, and changes nothing above the joint but what it passes on', () => {
    const drawn = linkDrawn(seven, 4);
    expect(verifyHang(drawn.problem, solveHang(drawn.problem))).toEqual([]);
    const extra = drawn.pullsTimes * 291 - 291;
    const picks = (of: typeof seven) => solveHang(of).picks.reduce((sum, each) => sum + each.reactionN, 0);
    expect(picks(drawn.problem) - picks(drawn.atRest)).toBeCloseTo(extra * g, 6);
  });

  it('under one pick turns by what it turns in the world, the grid with it', () => {
    const { tiltDownDeg: _, picks, ...rest } = seven;
    const read = readHangCase({ ...rest, picks: [picks[0]!] });
    if (!read.ok) throw new Error('read');
    const drawn = linkDrawn(read.value, 4);
    expect(drawn.pullsTimes).toBeGreaterThan(1);
    expect(verifyHang(drawn.problem, solveHang(drawn.problem))).toEqual([]);
  });
});
