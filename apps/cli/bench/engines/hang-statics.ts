import { type HangCase, readHangCase, solveHang, solveStages, verifyHang } from '#hang-statics';
import { seededRandom } from '#kernel';
import { median, numberFrom, readArguments, say } from '../arguments.js';

/** Hangs of two picks; seeded. */
function randomHangs(count: number, boxes: number): HangCase[] {
  const random = seededRandom(24);
  const between = (low: number, high: number) => low + random() * (high - low);
  return Array.from({ length: count }, () => {
    const read = readHangCase({
      gravityMps2: 9.80665,
      dynamicFactor: 1.25,
      tiltDownDeg: between(-5, 8),
      grid: {
        massKg: between(40, 150),
        cgBehindMm: between(100, 500),
        cgAboveMm: between(0, 150),
        holes: [
          { hole: 'front', behindMm: between(-300, 0), aboveMm: 130 },
          { hole: 'rear', behindMm: between(500, 1200), aboveMm: 130 },
        ],
      },
      boxes: Array.from({ length: boxes }, () => ({
        massKg: between(20, 90),
        frontHeightMm: between(200, 420),
        cgBehindMm: between(150, 350),
        cgBelowMm: between(90, 210),
        rearLeverMm: between(350, 650),
        splayDeg: Math.floor(between(0, 8)),
      })),
      picks: ['front', 'rear'].map((hole) => ({ hole, belowHookKg: 4, hoistKg: 55, chainKg: 20 })),
    });
    if (!read.ok) throw new Error(JSON.stringify(read.error[0]));
    return read.value;
  });
}

/** Random hangs of 24 boxes: the answer that the screen asks for while the pointer moves, and every moment of its lift, up, with its line, and down. */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const count = numberFrom(values, 'hangs', 10_000);
  const boxes = numberFrom(values, 'boxes', 24);
  const cases = randomHangs(count, boxes);
  for (const each of cases.slice(0, 500)) solveHang(each);
  const times = cases.map((each) => {
    const start = performance.now();
    solveHang(each);
    return performance.now() - start;
  });
  const plan = {
    cartLoads: Array.from({ length: Math.ceil(boxes / 4) }, (_, index) => ({
      firstPosition: 4 * index + 1,
      lastPosition: Math.min(boxes, 4 * index + 4),
      baseKg: 26,
    })),
    closedSplayDeg: 0,
    liftTiltDownDeg: 0,
    closing: { gridJoint: 'in the air', cartJoints: 'swung back and driven down' },
    comesDown: true,
    pull: { position: boxes, behindMm: 0, belowMm: 200, anchor: { xMm: -6000, zMm: -11_000 }, chainMm: 4000, tensionN: 500 },
  } as const;
  const envelopes = cases.slice(0, 1000).map((each) => {
    const start = performance.now();
    solveStages(each, plan);
    return performance.now() - start;
  });
  const wrong = cases.filter((each) => verifyHang(each, solveHang(each)).length > 0).length;
  say(
    JSON.stringify({
      hangs: count,
      boxes,
      medianMs: Number(median(times).toFixed(4)),
      meanMs: Number((times.reduce((sum, each) => sum + each, 0) / count).toFixed(4)),
      envelopeMedianMs: Number(median(envelopes).toFixed(4)),
      envelopeMostMs: Number(Math.max(...envelopes).toFixed(4)),
      wrong,
    }),
  );
  return wrong === 0 ? 0 : 1;
}
