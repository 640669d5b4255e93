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
