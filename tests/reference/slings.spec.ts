import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
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

  // D. L. Hall, Rigging Math Made Simple (primer).
  it('has legs as long as a textbook makes them (Hall, lesson 3: 10 and 4 ft make 10.77 ft, 6 and 3 ft make 6.7 ft)', () => {
    const legs = (...places: readonly (readonly [aside: number, up: number])[]) => {
      const answer = solveBridle(
        hook,
        places.map(([xMm, zMm]) => ({ xMm, yMm: 0, zMm })),
        500,
      );
      if (!answer.ok) throw new Error(answer.reason.code);
      return answer.legs;
    };
    const [first, second] = legs([-4, 10], [3, 6]);
    expect(first!.lengthMm).toBeCloseTo(10.77, 2);
    expect(second!.lengthMm).toBeCloseTo(6.7, 1);
    // Lesson 4: 500 lb, legs of 5 and 6.7 ft; T1 = W L1 H2 / (V1 H2 + V2 H1) = 454.5 lb, T2 = 304.9 lb (304.5 with L2 rounded to 6.7).
    const [near, far] = legs([-3, 4], [6, 3]);
    expect(near!.lengthMm).toBeCloseTo(5, 9);
    expect(near!.tensionN).toBeCloseTo(454.5, 1);
    expect(far!.tensionN).toBeCloseTo(304.9, 1);
  });

  it('on three legs in space carries what its unit directions say (Hall, lesson 14: directions printed to three places, 1,000 lb)', () => {
    const directions = [
      [-0.435, -0.381, 0.816],
      [-0.351, 0.282, 0.846],
      [0.47, -0.059, 0.881],
    ] as const;
    const answer = solveBridle(
      hook,
      directions.map(([x, y, z]) => ({ xMm: 1000 * x, yMm: 1000 * y, zMm: 1000 * z })),
      1000,
    );
    if (!answer.ok) throw new Error(answer.reason.code);
    // Solved from the printed directions (not printed themselves): 228.1, 417.5, 522.9 times each. The second is printed 0.958 long, the others 1.
    const longs = directions.map((each) => Math.hypot(...each));
    expect(longs.map((each) => Number(each.toFixed(3)))).toEqual([1, 0.958, 1]);
    [228.1, 417.5, 522.9].forEach((each, index) => expect(answer.legs[index]!.tensionN).toBeCloseTo(each * longs[index]!, 0));
    // The same by a library for linear algebra.
    const unit = directions.map((each) => each.map((part) => part / Math.hypot(...each)));
    const matrix = new Matrix([0, 1, 2].map((row) => unit.map((each) => each[row]!)));
    const solved = solve(matrix, Matrix.columnVector([0, 0, 1000])).to1DArray();
    answer.legs.forEach((leg, index) => expect(leg.tensionN).toBeCloseTo(solved[index]!, 8));
  });

  it('with three legs agrees with a library for linear algebra, wherever its anchors are', () => {
    const offset = fc.integer({ min: 100, max: 8000 });
    fc.assert(
      fc.property(offset, offset, offset, fc.integer({ min: 500, max: 12_000 }), (a, b, c, high) => {
        const anchors = [
          { xMm: a, yMm: -c / 7, zMm: high },
          { xMm: -b, yMm: b, zMm: high + 100 },
          { xMm: -b, yMm: -c, zMm: high / 2 },
        ];
        const unit = anchors.map(({ xMm, yMm, zMm }) => [xMm, yMm, zMm].map((each) => each / Math.hypot(xMm, yMm, zMm)));
        const solved = solve(
          new Matrix([0, 1, 2].map((row) => unit.map((each) => each[row]!))),
          Matrix.columnVector([0, 0, 8000]),
        ).to1DArray();
        const answer = solveBridle(hook, anchors, 8000);
        expect(answer.ok).toBe(solved.every((each) => each > -8e-3));
        if (answer.ok) answer.legs.forEach((leg, index) => expect(Math.abs(leg.tensionN - solved[index]!)).toBeLessThan(1e-6 * 8000));
      }),
      { numRuns: 50 },
    );
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
