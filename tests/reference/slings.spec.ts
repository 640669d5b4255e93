import fc from 'fast-check';
import { slingTensionFactor, solveBridle } from '#hang-statics';

/** Angle from the horizontal -> tension factor as trade tables print it; they round at 65, 40 and 35 degrees, hence the 0.002. */
const printed: readonly (readonly [number, number])[] = [
  [90, 1.0],
  [85, 1.004],
  [80, 1.015],
  [75, 1.035],
  [70, 1.064],
  [65, 1.104],
  [60, 1.155],
  [55, 1.221],
  [50, 1.305],
  [45, 1.414],
  [40, 1.555],
  [35, 1.742],
  [30, 2.0],
];

/** Grade 80 alloy chain, lb: single 90, double 60 45 30, triple or quad 60 45 30 degrees (OSHA, Guidance on Safe Sling Use, Table 1). */
const grade80 = [
  [2100, 3600, 3000, 2100, 5500, 4400, 3200],
  [3500, 6100, 4900, 3500, 9100, 7400, 5200],
  [4500, 7800, 6400, 4500, 11700, 9500, 6800],
  [7100, 12300, 10000, 7100, 18400, 15100, 10600],
  [12000, 20800, 17000, 12000, 31200, 25500, 18000],
  [18100, 31300, 25600, 18100, 47000, 38400, 27100],
  [28300, 49000, 40000, 28300, 73500, 60000, 42400],
];
/** Grade 100, same source, Table 2. */
const grade100 = [
  [2700, 4700, 3800, 2700, 7000, 5700, 4000],
  [4300, 7400, 6100, 4300, 11200, 9100, 6400],
  [5700, 9900, 8100, 5700, 14800, 12100, 8500],
  [8800, 15200, 12400, 8800, 22900, 18700, 13200],
  [15000, 26000, 21200, 15000, 39000, 31800, 22500],
];

describe('slings against published tables', () => {
  it.each(printed)('at %s degrees from the horizontal the factor is %s', (angle, factor) => {
    expect(Math.abs(slingTensionFactor(angle) - factor)).toBeLessThanOrEqual(0.002);
  });

  it.each([...grade80, ...grade100])(
    'a chain of %i lb carries in two and three legs what the agency prints, within 1.5 %%',
    (single, ...more) => {
      const angles = [60, 45, 30];
      more.forEach((rated, index) => {
        const legs = index < 3 ? 2 : 3;
        const computed = (legs * single) / slingTensionFactor(angles[index % 3]!);
        // The agency prints whole hundreds of pounds: the smallest cells are as coarse as 50 lb.
        expect(Math.abs(computed - rated)).toBeLessThanOrEqual(Math.max(0.015 * rated, 50) + 1e-9);
      });
    },
  );

  it('1,000 lb on two legs: 500 lb a leg at 90 degrees, 1,000 lb at 30 (NAVEDTRA 14080)', () => {
    const at = (degrees: number) => (1000 / 2) * slingTensionFactor(degrees);
    expect(at(90)).toBeCloseTo(500, 9);
    expect(at(30)).toBeCloseTo(1000, 9);
  });

  it.each([0, -5, 91, NaN])('refuses an angle of %s degrees', (angle) => {
    expect(() => slingTensionFactor(angle)).toThrow(RangeError);
  });
});

describe('a bridle', () => {
  const hook = { xMm: 0, yMm: 0, zMm: 0 };

  it('with two equal legs carries the sling factor', () => {
    const answer = solveBridle(
      hook,
      [
        { xMm: -1000, yMm: 0, zMm: 1000 },
        { xMm: 1000, yMm: 0, zMm: 1000 },
      ],
      1000,
    );
    if (!answer.ok) throw new Error(answer.reason.code);
    for (const leg of answer.legs) {
      expect(leg.tensionN).toBeCloseTo(500 * slingTensionFactor(45), 9);
      expect(leg.horizontalN).toBeCloseTo(500, 9);
      expect(leg.lengthMm).toBeCloseTo(1000 * Math.SQRT2, 9);
    }
  });

  it('holds its load in equilibrium, with two legs or three, wherever the hook hangs between them', () => {
    const offset = fc.integer({ min: 100, max: 8000 });
    fc.assert(
      fc.property(offset, offset, offset, fc.integer({ min: 500, max: 12_000 }), fc.boolean(), (a, b, c, high, three) => {
        const anchors = three
          ? [
              { xMm: a, yMm: 0, zMm: high },
              { xMm: -b, yMm: b, zMm: high + 100 },
              { xMm: -b, yMm: -c, zMm: high },
            ]
          : [
              { xMm: a, yMm: 0, zMm: high },
              { xMm: -b, yMm: 0, zMm: high + c },
            ];
        const answer = solveBridle(hook, anchors, 1000);
        if (!answer.ok) throw new Error(answer.reason.code);
        const sum = (key: 'xMm' | 'yMm' | 'zMm') =>
          answer.legs.reduce((total, leg, index) => total + (leg.tensionN * anchors[index]![key]) / leg.lengthMm, 0);
        expect(sum('xMm')).toBeCloseTo(0, 6);
        expect(sum('yMm')).toBeCloseTo(0, 6);
        expect(sum('zMm')).toBeCloseTo(1000, 6);
      }),
    );
  });

  it.each([
    [
      'both anchors on one side',
      [
        { xMm: 500, yMm: 0, zMm: 900 },
        { xMm: 1000, yMm: 0, zMm: 900 },
      ],
    ],
    [
      'an anchor below the hook',
      [
        { xMm: -500, yMm: 0, zMm: -1 },
        { xMm: 1000, yMm: 0, zMm: 900 },
      ],
    ],
    [
      'anchors that the hook is not between',
      [
        { xMm: -500, yMm: 400, zMm: 900 },
        { xMm: 1000, yMm: 0, zMm: 900 },
      ],
    ],
    [
      'three legs with the hook outside',
      [
        { xMm: 100, yMm: 0, zMm: 900 },
        { xMm: 900, yMm: 300, zMm: 900 },
        { xMm: 900, yMm: -300, zMm: 900 },
      ],
    ],
  ])('cannot hang with %s, and says why', (_what, anchors) => {
    const answer = solveBridle(hook, anchors, 1000);
    expect(answer).toMatchObject({
      ok: false,
      reason: { code: expect.stringMatching(/^(anchor-not-above|hook-would-swing|leg-would-push)$/) },
    });
  });
});
