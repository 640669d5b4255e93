import fc from 'fast-check';
import { type SpacePoint, slingTensionFactor, solveBridle } from '#hang-statics';

const hook: SpacePoint = { xMm: 100, yMm: -50, zMm: 200 };
const at = (x: number, y: number, z: number): SpacePoint => ({ xMm: hook.xMm + x, yMm: hook.yMm + y, zMm: hook.zMm + z });
const around = (n: number, radius: number, height: number) =>
  Array.from({ length: n }, (_, i) => at(radius * Math.cos((2 * Math.PI * i) / n), radius * Math.sin((2 * Math.PI * i) / n), height));

const legsOf = (anchors: readonly SpacePoint[], loadN: number) => {
  const answer = solveBridle(hook, anchors, loadN);
  if (!answer.ok) throw new Error(answer.reason.code);
  return answer.legs;
};

describe('a bridle', () => {
  it('of two upright legs shares the load in halves', () => {
    for (const leg of legsOf([at(0, 0, 2000), at(0, 0, 3000)], 900)) {
      expect(leg.tensionN).toBe(450);
      expect(leg.horizontalN).toBe(0);
      expect(leg.fromHorizontalDeg).toBe(90);
    }
  });

  it('with one leg upright and one aslant hangs from the upright one alone', () => {
    expect(legsOf([at(0, 0, 2000), at(1000, 0, 2000)], 900).map((leg) => leg.tensionN)).toEqual([900, 0]);
  });

  it('is in balance along every axis, with two legs and three, and horizontal pulls are those of the legs', () => {
    const radius = fc.integer({ min: 100, max: 5000 });
    const height = fc.integer({ min: 200, max: 8000 });
    fc.assert(
      fc.property(
        fc.constantFrom(2, 3),
        fc.array(radius, { minLength: 3, maxLength: 3 }),
        fc.array(height, { minLength: 3, maxLength: 3 }),
        fc.double({ min: 1, max: 90_000, noNaN: true }),
        (n, radii, heights, loadN) => {
          const anchors = Array.from({ length: n }, (_, i) => around(n, radii[i]!, heights[i]!)[i]!);
          const legs = legsOf(anchors, loadN);
          let [x, y, z] = [0, 0, 0];
          anchors.forEach((anchor, i) => {
            const { tensionN, lengthMm, horizontalN, fromHorizontalDeg } = legs[i]!;
            const [dx, dy, dz] = [anchor.xMm - hook.xMm, anchor.yMm - hook.yMm, anchor.zMm - hook.zMm];
            expect(lengthMm).toBeCloseTo(Math.sqrt(dx * dx + dy * dy + dz * dz), 6);
            expect(Math.tan((fromHorizontalDeg * Math.PI) / 180)).toBeCloseTo(dz / Math.sqrt(dx * dx + dy * dy), 6);
            expect(tensionN).toBeGreaterThan(0);
            expect(horizontalN / tensionN).toBeCloseTo(Math.sqrt(dx * dx + dy * dy) / lengthMm, 9);
            x += (tensionN * dx) / lengthMm;
            y += (tensionN * dy) / lengthMm;
            z += (tensionN * dz) / lengthMm;
          });
          for (const off of [x, y, z - loadN]) expect(Math.abs(off)).toBeLessThan(1e-6 * loadN);
        },
      ),
    );
  });

  it.each<[string, readonly SpacePoint[], string]>([
    ['one leg', [at(0, 0, 100)], 'bridle-legs'],
    ['four legs', around(4, 500, 1000), 'bridle-legs'],
    ['an anchor level with the hook', [at(500, 0, 0), at(-500, 0, 800)], 'anchor-not-above'],
    ['an anchor below the hook', [at(500, 0, 900), at(-500, 0, -10)], 'anchor-not-above'],
    ['both legs on one side', [at(500, 0, 900), at(900, 0, 900)], 'hook-would-swing'],
    ['two legs that are not opposite', [at(500, 0, 900), at(0, 500, 900)], 'hook-would-swing'],
    ['three legs in one plane', [at(500, 0, 900), at(0, 0, 900), at(-500, 0, 900)], 'hook-would-swing'],
    ['three legs on one side', [at(500, 100, 900), at(500, -100, 900), at(900, 0, 1200)], 'leg-would-push'],
  ])('cannot hang with %s', (_what, anchors, code) => {
    const answer = solveBridle(hook, anchors, 1000);
    expect(answer.ok ? 'hangs' : answer.reason.code).toBe(code);
  });

  it('has tension factors of 1 upright and 2 at 30 degrees, and none outside', () => {
    expect(slingTensionFactor(90)).toBe(1);
    expect(slingTensionFactor(30)).toBeCloseTo(2, 12);
    expect(slingTensionFactor(0.5)).toBeCloseTo(1 / Math.sin(Math.PI / 360), 9);
    for (const degrees of [0, -30, 90.5, Number.NaN]) expect(() => slingTensionFactor(degrees)).toThrow(RangeError);
  });
});
