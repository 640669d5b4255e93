import fc from 'fast-check';
import {
  type LossModel,
  type SpareLine,
  chooseTrunk,
  planSpares,
  poolSpares,
  smallestSpares,
  tailsOfLosses,
  verifySpares,
} from '#hardware-count';

const poisson = fc.double({ min: 0.01, max: 6, noNaN: true }).map((mean): LossModel => ({ kind: 'poisson', mean }));
const gamma = fc
  .record({
    shape: fc.double({ min: 0.2, max: 9, noNaN: true }),
    rate: fc.integer({ min: 50, max: 9000 }),
    pieceUses: fc.integer({ min: 1, max: 6000 }),
  })
  .filter(({ shape, rate, pieceUses }) => (shape / rate) * pieceUses < 8)
  .map((each): LossModel => ({ kind: 'gamma-poisson', ...each }));
const losses = fc.oneof(poisson, gamma);
const level = fc.double({ min: 0.5, max: 0.995, noNaN: true });
const weight = fc.constantFrom(0.03, 0.06, 0.09, 0.62, 0.9, 17);
const trunkLine = fc.record({ losses, least: fc.integer({ min: 0, max: 3 }), weight });

describe('spares of a whole trunk', () => {
  it('no choice of up to three lines is lighter: every combination tried', () => {
    fc.assert(
      fc.property(fc.array(trunkLine, { minLength: 1, maxLength: 3 }), level, (lines, wanted) => {
        const choice = chooseTrunk(lines, wanted);
        expect(choice.status).toBe('optimal');
        expect(choice.weight).toBeCloseTo(lightestOfAll(lines, wanted, choice.weight), 9);
        expect(choice.level).toBeGreaterThanOrEqual(wanted - 1e-12);
      }),
      { numRuns: 60 },
    );
  });

  it('is never heavier than equal shares of the level, and the bound of a search cut short holds', () => {
    fc.assert(
      fc.property(fc.array(trunkLine, { minLength: 1, maxLength: 9 }), level, (lines, wanted) => {
        const [full, short] = [chooseTrunk(lines, wanted), chooseTrunk(lines, wanted, 0)];
        for (const each of [full, short]) {
          expect(each.weight).toBeLessThanOrEqual(each.equalShareWeight * (1 + 1e-12));
          expect(each.bound).toBeLessThanOrEqual(full.weight * (1 + 1e-9));
          const reached = each.spares.reduce((product, n, index) => product * tailsOfLosses(lines[index]!.losses, n).atMost, 1);
          expect(reached).toBeGreaterThanOrEqual(wanted - 1e-9);
        }
        expect(full.weight).toBeLessThanOrEqual(short.weight * (1 + 1e-12));
      }),
      { numRuns: 80 },
    );
  });

  it('a higher level never takes less', () => {
    fc.assert(
      fc.property(fc.array(trunkLine, { minLength: 1, maxLength: 5 }), level, level, (lines, a, b) => {
        const [lower, higher] = [chooseTrunk(lines, Math.min(a, b)), chooseTrunk(lines, Math.max(a, b))];
        expect(lower.weight).toBeLessThanOrEqual(higher.weight * (1 + 1e-12));
        for (const line of lines)
          expect(smallestSpares(line.losses, Math.min(a, b)).spares).toBeLessThanOrEqual(
            smallestSpares(line.losses, Math.max(a, b)).spares,
          );
      }),
      { numRuns: 100 },
    );
  });

  it('answers for a trunk of forty lines with the proof', () => {
    const lines = Array.from({ length: 40 }, (_, index) => ({
      losses: { kind: 'poisson' as const, mean: 0.1 + (index % 7) * 0.4 },
      least: index % 3,
      weight: [0.03, 0.06, 0.09, 0.62, 0.9][index % 5]!,
    }));
    const choice = chooseTrunk(lines, 0.95);
    expect(choice.status).toBe('optimal');
    expect(choice.weight).toBeLessThan(choice.equalShareWeight);
  });
});

/** By trying every number of spares of every line that is not heavier than what was found. */
function lightestOfAll(lines: readonly { losses: LossModel; least: number; weight: number }[], wanted: number, found: number): number {
  let best = Infinity;
  const go = (index: number, weight: number, product: number): void => {
    if (weight > found + 1e-9 || product < wanted * (1 - 1e-11)) return;
    if (index === lines.length) {
      best = Math.min(best, weight);
      return;
    }
    const line = lines[index]!;
    for (let n = line.least; weight + n * line.weight <= found + 1e-9 && n < line.least + 400; n++)
      go(index + 1, weight + n * line.weight, product * tailsOfLosses(line.losses, n).atMost);
  };
  go(0, 0, 1);
  return best;
}

const cells = fc.array(
  fc.record({
    hang: fc.constantFrom('Left', 'Right', 'Centre'),
    leg: fc.constantFrom('a', 'b', 'c', 'd'),
    pieceUses: fc.integer({ min: 0, max: 120 }),
  }),
  { minLength: 1, maxLength: 12 },
);
const knowledge = fc.oneof(
  fc.record({ lossPerUse: fc.double({ min: 0, max: 0.02, noNaN: true }) }),
  fc.record({
    prior: fc.record({ losses: fc.double({ min: 0.2, max: 5, noNaN: true }), uses: fc.integer({ min: 200, max: 5000 }) }),
    counted: fc.record({ losses: fc.integer({ min: 0, max: 6 }), uses: fc.integer({ min: 0, max: 5000 }) }),
  }),
);

describe('the fewest spares of a line', () => {
  it('reach the level, and one less does not: at any level, by adding up the terms', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 12, noNaN: true }), fc.double({ min: 0.01, max: 0.999, noNaN: true }), (mean, wanted) => {
        const { spares, levelReached } = smallestSpares({ kind: 'poisson', mean }, wanted);
        const upTo = (n: number): number => {
          let [term, total] = [Math.exp(-mean), n < 0 ? 0 : Math.exp(-mean)];
          for (let k = 1; k <= n; k++) total += term *= mean / k;
          return total;
        };
        expect(levelReached).toBeCloseTo(upTo(spares), 12);
        expect(upTo(spares)).toBeGreaterThanOrEqual(wanted - 1e-11);
        expect(upTo(spares - 1)).toBeLessThan(wanted + 1e-11);
      }),
      { numRuns: 300 },
    );
  });
});

describe('a choice that greed would miss', () => {
  it('is found: unlike weights, every combination tried', () => {
    let lighterThanGreed = 0;
    for (let seed = 0; seed < 40; seed++) {
      const lines = [2, 3, 5].map((weight, index) => ({
        losses: { kind: 'poisson' as const, mean: 0.4 + ((seed * (index + 3)) % 11) / 7 },
        least: 0,
        weight: weight + ((seed * (index + 1)) % 4),
      }));
      const wanted = 0.8 + (seed % 10) / 60;
      const [full, short] = [chooseTrunk(lines, wanted), chooseTrunk(lines, wanted, 1)];
      expect(full.status).toBe('optimal');
      expect(full.weight).toBeCloseTo(lightestOfAll(lines, wanted, short.weight), 9);
      expect(full.bound).toBe(full.weight);
      expect(short.bound).toBeGreaterThan(0);
      if (full.weight < short.weight) {
        lighterThanGreed++;
        expect(short.status).toBe('feasible');
      }
    }
    expect(lighterThanGreed).toBeGreaterThan(0);
  });

  it('cut short, never claims a bound below what the lines must have at least', () => {
    const lines = [0, 1, 2].map((index) => ({ losses: { kind: 'poisson' as const, mean: 1 + index }, least: 2, weight: 10 + index }));
    const short = chooseTrunk(lines, 0.99, 0);
    expect(short.status).toBe('feasible');
    expect(short.bound).toBeGreaterThan(2 * (10 + 11 + 12));
    expect(short.bound).toBeLessThanOrEqual(chooseTrunk(lines, 0.99).weight);
  });
});

describe('one stock for all hangs and legs', () => {
  it('never needs more than stocks of their own', () => {
    fc.assert(
      fc.property(cells, knowledge, level, (all, known, wanted) => {
        const law = (pieceUses: number): LossModel =>
          'lossPerUse' in known
            ? { kind: 'poisson', mean: known.lossPerUse * pieceUses }
            : {
                kind: 'gamma-poisson',
                shape: known.prior.losses + known.counted.losses,
                rate: known.prior.uses + known.counted.uses,
                pieceUses,
              };
        const { together, byHang, byLeg } = poolSpares(law, all, wanted);
        expect(together).toBeLessThanOrEqual(byHang);
        expect(together).toBeLessThanOrEqual(byLeg);
      }),
      { numRuns: 200 },
    );
  });
});

describe('spares of a plan', () => {
  const line = fc.record({
    key: fc.constant(''),
    knowledge: fc.option(knowledge),
    level: fc.option(level),
    stopsAShow: fc.boolean(),
    fullSets: fc.integer({ min: 0, max: 6 }),
    weight: fc.option(weight),
    cells,
  });
  const named = fc
    .array(line, { minLength: 1, maxLength: 8 })
    .map((all): SpareLine[] => all.map((each, index) => ({ ...each, key: `line ${index}` })));

  it('agree with a checker that adds the terms one by one, with a level for the trunk and without', () => {
    fc.assert(
      fc.property(named, fc.option(level), (lines, wanted) => {
        expect(verifySpares(lines, planSpares(lines, wanted))).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  it('the checker finds a spare too few, a level that is not there and a bound that is none', () => {
    const lines: SpareLine[] = [
      {
        key: 'pin',
        knowledge: { lossPerUse: 0.01 },
        level: 0.9,
        stopsAShow: true,
        fullSets: 0,
        weight: 0.1,
        cells: [{ hang: 'a', leg: 'b', pieceUses: 100 }],
      },
    ];
    const plan = planSpares(lines, 0.95);
    const changed = (spares: number) => ({ ...plan, lines: [{ ...plan.lines[0]!, spares }] });
    expect(verifySpares(lines, changed(0)).join()).toMatch(/no spare.*level 0\.9 is not reached.*trunk is not reached/);
    expect(verifySpares(lines, changed(9)).join()).toMatch(/summed/);
    expect(verifySpares(lines, { ...plan, trunk: { ...plan.trunk, bound: 9 } }).join()).toMatch(/bound/);
  });

  it('the checker names each claim that is wrong', () => {
    const lines = [0.01, 0.02].map(
      (lossPerUse, index): SpareLine => ({
        key: `pin ${index}`,
        knowledge: { lossPerUse },
        level: null,
        stopsAShow: false,
        fullSets: 0,
        weight: 0.1 + index / 10,
        cells: [{ hang: 'a', leg: 'b', pieceUses: 100 }],
      }),
    );
    const plan = planSpares(lines, 0.95);
    expect(verifySpares(lines, plan)).toEqual([]);
    const withTrunk = (change: object) => verifySpares(lines, { ...plan, trunk: { ...plan.trunk, ...change } });
    const withFirst = (change: object, of = lines) =>
      verifySpares(of, { ...plan, lines: [{ ...plan.lines[0]!, ...change }, plan.lines[1]!] });
    expect(withFirst({ key: 'nut' })).toEqual(['line 0 is nut, not pin 0']);
    expect(withFirst({ levelReached: 0.5 }).join()).toMatch(/^pin 0: level 0.5, summed 0.9\d+$/);
    expect(withFirst({ mean: 1.1 })).toEqual(['pin 0: 1.1 losses expected, counted 1']);
    expect(
      withFirst(
        {},
        lines.map((line) => ({ ...line, fullSets: 90 })),
      ).join(),
    ).toMatch(/pin 0: fewer spares than one joint set/);
    expect(withFirst({}, [{ ...lines[0]!, knowledge: null }, lines[1]!]).join()).toMatch(/pin 0: a level without known losses/);
    expect(withTrunk({ level: plan.trunk.level! + 1e-6 }).join()).toMatch(/^all lines together/);
    expect(withTrunk({ wanted: 0.9999 })).toEqual(['the level of the trunk is not reached']);
    expect(withTrunk({ weight: plan.trunk.weight + 0.1, bound: 0, status: 'feasible', equalShareWeight: 99 }).join()).toMatch(
      /^the spares weigh/,
    );
    expect(withTrunk({ bound: plan.trunk.weight * 1.01, status: 'feasible' })).toEqual(['the bound is above what was found']);
    expect(withTrunk({ bound: plan.trunk.weight * 0.99 })).toEqual(['called least without a bound that meets it']);
    expect(withTrunk({ equalShareWeight: plan.trunk.weight * 0.99 })).toEqual(['equal shares of the level would be lighter']);
  });

  it('are none where nothing asks for any, and what the line itself asks for otherwise', () => {
    const bare: SpareLine = {
      key: 'pin',
      knowledge: { lossPerUse: 0.01 },
      level: null,
      stopsAShow: false,
      fullSets: 0,
      weight: 0.1,
      cells: [{ hang: 'a', leg: 'b', pieceUses: 100 }],
    };
    const sparesOf = (change: Partial<SpareLine>, trunk: number | null = null) =>
      planSpares([{ ...bare, ...change }], trunk).lines[0]!.spares;
    expect(sparesOf({})).toBe(0);
    expect(sparesOf({ knowledge: null })).toBe(0);
    expect(sparesOf({ stopsAShow: true })).toBe(1);
    expect(sparesOf({ stopsAShow: true, fullSets: 4 })).toBe(4);
    // Poisson of mean 1: 0.3679, 0.7358, 0.9197, 0.9810 for at most 0, 1, 2, 3.
    expect(sparesOf({ level: 0.7 })).toBe(1);
    expect(sparesOf({ level: 0.9 })).toBe(2);
    expect(sparesOf({}, 0.95)).toBe(3);
    expect(sparesOf({ weight: null }, 0.95)).toBe(3);
  });

  it('says what counting changed: losses above belief take more spares, none at all take fewer', () => {
    const lineWith = (losses: number): SpareLine => ({
      key: 'pin',
      knowledge: { prior: { losses: 1, uses: 1000 }, counted: { losses, uses: 3000 } },
      level: 0.95,
      stopsAShow: true,
      fullSets: 0,
      weight: null,
      cells: [{ hang: 'a', leg: 'b', pieceUses: 2000 }],
    });
    const [many, none] = [planSpares([lineWith(12)], null).lines[0]!, planSpares([lineWith(0)], null).lines[0]!];
    expect(many.learned).toMatchObject({ priorMean: 0.001, posteriorMean: 13 / 4000 });
    expect(many.spares).toBeGreaterThan(many.learned!.sparesByPriorAlone);
    expect(none.spares).toBeLessThan(none.learned!.sparesByPriorAlone);
  });
});
