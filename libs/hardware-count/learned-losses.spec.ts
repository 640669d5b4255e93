import fc from 'fast-check';
import { type CountRecord, countsInForce, evidenceSince, learnLosses, lossesOf } from '#hardware-count';

const at = (minute: number): string => new Date(Date.UTC(2027, 2, 1, 9, minute)).toISOString();
const record = (id: number, minute: number, count: Partial<CountRecord> = {}): CountRecord => ({
  id: String(id),
  corrects: null,
  at: at(minute),
  sent: 132,
  returned: 132,
  damaged: 0,
  uses: 120,
  ...count,
});

describe('what counts at return teach', () => {
  it('a loss is what did not come back and what came back unfit', () => {
    expect(lossesOf({ sent: 132, returned: 129, damaged: 1 })).toBe(4);
  });

  it('belief and count add up: shape by losses, rate by uses', () => {
    expect(learnLosses({ losses: 1, uses: 4000 }, { losses: 4, uses: 1000 })).toMatchObject({ priorMean: 0.00025, posteriorMean: 0.001 });
    expect(learnLosses({ losses: 1, uses: 4000 }).posteriorMean).toBe(0.00025);
  });

  it('a correction takes the place of its record, and one with nothing in it takes it back', () => {
    const first = record(1, 0, { returned: 120 });
    const corrected = record(2, 5, { corrects: '1', returned: 131 });
    const undone = record(3, 9, { corrects: '2', sent: 0, returned: 0, uses: 0 });
    expect(evidenceSince([first], null)).toEqual({ losses: 12, uses: 120 });
    expect(evidenceSince([first, corrected], null)).toEqual({ losses: 1, uses: 120 });
    expect(countsInForce([first, corrected]).map((each) => each.id)).toEqual(['2']);
    expect(evidenceSince([first, corrected, undone], null)).toEqual({ losses: 0, uses: 0 });
  });

  it('a sum written down at any instant and what came after make the whole, corrections of older records too', () => {
    const counts = fc.array(fc.record({ losses: fc.integer({ min: 0, max: 9 }), corrects: fc.option(fc.nat()) }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(counts, fc.integer({ min: -1, max: 12 }), (all, minute) => {
        const corrected = new Set<number>();
        const records = all.map(({ losses, corrects }, index) => {
          const target = corrects === null || index === 0 ? null : corrects % index;
          const mine = target === null || corrected.has(target) ? null : target;
          if (mine !== null) corrected.add(mine);
          return record(index, index, { returned: 132 - losses, corrects: mine === null ? null : String(mine) });
        });
        const written = evidenceSince(
          records.filter((each) => each.at <= at(minute)),
          null,
        );
        const since = evidenceSince(records, at(minute));
        expect({ losses: written.losses + since.losses, uses: written.uses + since.uses }).toEqual(evidenceSince(records, null));
      }),
      { numRuns: 200 },
    );
  });
});
