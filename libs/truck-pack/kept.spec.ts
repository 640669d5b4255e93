import fc from 'fast-check';
import {
  type KeepOptions,
  type KeptPlacement,
  type TruckCase,
  loadRowsOf,
  readTruckCase,
  solveRows,
  swapRows,
  verifyTruckPack,
} from '#truck-pack';

function read(input: unknown): TruckCase {
  const result = readTruckCase(input);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const truck = { id: 'T1', innerLengthMm: 13600, innerWidthMm: 2480, innerHeightMm: 2700 };
const cart = (id: string, firstOff: number) => ({
  id,
  lengthMm: 1150,
  widthMm: 720,
  heightMm: 1540,
  massKg: 300,
  mayTurn: true,
  firstOff,
  floorOnly: true,
  maxOnTopKg: 0,
});
const motors = [0, 1, 2].map((n) => ({ ...cart(`M${n}`, 1), lengthMm: 1200, widthMm: 800, heightMm: 900 }));
const problem = read({ trucks: [truck], pieces: [...motors, ...Array.from({ length: 18 }, (_, n) => cart(`K${n}`, 2 + (n % 4)))] });
const atDoor: KeptPlacement[] = motors.map(({ id }, n) => ({ truck: 'T1', id, xMm: 12400, yMm: 20 + 810 * n, zMm: 0, turned: false }));
const options: KeepOptions = { kept: atDoor };
const plan = (with_: KeepOptions, of = problem) => solveRows(of, { seed: 1, rounds: 4, ...with_ })!;

describe('kept placements', () => {
  it('stay exactly where they are, and the rest is planned in rows ahead of them', () => {
    const answer = plan(options);
    expect(verifyTruckPack(problem, answer, options)).toEqual([]);
    expect(answer.leftOver).toEqual([]);
    expect(answer.trucks[0]!.placements.filter((each) => each.id.startsWith('M')).sort((a, b) => (a.id < b.id ? -1 : 1))).toEqual(
      atDoor.map(({ truck: _truck, ...at }) => at),
    );
  });

  it('of the plan itself, any rows of it, give a plan that keeps every rule', () => {
    const first = plan({});
    const rows = loadRowsOf(problem, first.trucks[0]!.placements);
    fc.assert(
      fc.property(fc.subarray(rows.map((_, at) => at)), (picked) => {
        const ids = new Set(picked.flatMap((at) => rows[at]!.ids));
        const kept = first.trucks[0]!.placements.filter((each) => ids.has(each.id)).map((each) => ({ truck: 'T1', ...each }));
        const again = plan({ kept });
        expect(verifyTruckPack(problem, again, { kept })).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  it('that are loaded go in first, and nothing is planned where it would have to pass them', () => {
    const loaded = {
      kept: problem.pieces.slice(-3).map(({ id }, n) => ({ truck: 'T1', id, xMm: 0, yMm: 720 * n, zMm: 0, turned: false, loaded: true })),
    };
    const small = read({ trucks: [truck], pieces: problem.pieces.map((each) => ({ ...each, firstOff: 1 })) });
    const answer = plan(loaded, small);
    expect(verifyTruckPack(small, answer, loaded)).toEqual([]);
    expect(new Set(answer.trucks[0]!.loadingOrder.slice(0, 3))).toEqual(new Set(loaded.kept.map((each) => each.id)));
  });

  it.each<[string, KeptPlacement[], string[], string[]]>([
    ['overlap', [atDoor[0]!, { ...atDoor[1]!, yMm: 100 }], ['overlap'], ['M0']],
    ['stand outside', [{ ...atDoor[0]!, xMm: 13000 }], ['outside'], ['M0']],
    ['float', [{ ...atDoor[0]!, zMm: 10 }], ['floor-only', 'support'], ['M0', 'M0']],
    [
      'are in the way of earlier ones',
      [
        { ...atDoor[0]!, xMm: 0 },
        { truck: 'T1', id: 'K1', xMm: 1200, yMm: 0, zMm: 0, turned: false },
      ],
      ['order'],
      ['M0'],
    ],
    ['are no pieces of the case', [{ ...atDoor[0]!, id: 'X' }], ['unknown-piece'], ['X']],
    ['are in no truck of the case', [{ ...atDoor[0]!, truck: 'T9' }], ['unknown-truck'], ['T9']],
    ['stand in two places', [atDoor[0]!, { ...atDoor[0]!, xMm: 0 }], ['count'], ['M0']],
  ])('that %s are refused by name', (_what, kept, codes, subjects) => {
    const answer = plan({ kept });
    expect(answer.refused!.map((each) => each.code)).toEqual(codes);
    expect(answer.refused!.map((each) => each.subject)).toEqual(subjects);
    expect(answer.trucks).toEqual([]);
    expect(answer.leftOver.length).toBe(problem.pieces.length);
  });

  it('are missed by the checker where a plan moved them', () => {
    const moved = { kept: atDoor.map((each) => ({ ...each, xMm: each.xMm - 1 })) };
    expect([...new Set(verifyTruckPack(problem, plan(options), moved).map((each) => each.code))]).toEqual(['kept']);
  });
});

describe('a waived piece', () => {
  it('may stand in the way, and the plan names it', () => {
    const kept: KeptPlacement[] = [{ ...atDoor[0]!, xMm: 0, yMm: 0 }];
    const waiver = { kept, waived: ['M0'] };
    const answer = plan(waiver);
    expect(answer.waived).toEqual(['M0']);
    expect(verifyTruckPack(problem, answer, waiver)).toEqual([]);
    expect(verifyTruckPack(problem, { ...answer, waived: [] }, waiver).map((each) => each.code)).toEqual(['waived']);
    expect(new Set(verifyTruckPack(problem, answer, { kept }).map((each) => each.code))).toEqual(new Set(['order']));
  });
});

describe('the reason of a row', () => {
  const wide = { ...cart('W', 1), lengthMm: 1000, widthMm: 1240, mayTurn: false };

  it('says what it holds, what it loses and what the next best would have cost', () => {
    const two = read({ trucks: [truck], pieces: [0, 1].map((n) => ({ ...wide, id: `W${n}` })) });
    const { rows } = plan({}, two).trucks[0]!;
    // Two abreast fill 2,480 mm: nothing lost. One alone leaves half of its depth, both in one lane half of twice that.
    expect(rows).toEqual([
      {
        code: 'least-lost',
        fromMm: 0,
        toMm: 1000,
        ids: expect.arrayContaining(['W0', 'W1']),
        stops: [{ firstOff: 1, pieces: 2 }],
        lostMm: 0,
        nextBestMm: 500,
        freeAheadMm: 0,
        movedRows: 0,
        isLevelled: false,
      },
    ]);
  });

  it('says that no other could stand there, or that it stays by wish', () => {
    const one = read({ trucks: [truck], pieces: [{ ...wide, id: 'W0' }] });
    expect(plan({}, one).trucks[0]!.rows).toMatchObject([{ code: 'only', ids: ['W0'] }]);
    const kept = [{ truck: 'T1', id: 'W0', xMm: 5000, yMm: 0, zMm: 0, turned: false }];
    expect(plan({ kept }, one).trucks[0]!.rows).toMatchObject([{ code: 'kept', ids: ['W0'], fromMm: 5000, toMm: 6000 }]);
  });

  it('says that it was moved across for the balance', () => {
    const side = read({ trucks: [{ ...truck, maxSideOffsetMm: 50 }], pieces: [{ ...wide, id: 'W0' }] });
    expect(plan({}, side).trucks[0]!.rows).toMatchObject([{ isLevelled: true }]);
  });

  it('is there for every piece once', () => {
    const { placements, rows } = plan(options).trucks[0]!;
    expect(rows!.flatMap((each) => each.ids).sort()).toEqual(placements.map((each) => each.id).sort());
    expect(rows!.filter((each) => each.code === 'kept').flatMap((each) => each.ids)).toEqual(atDoor.map((each) => each.id));
  });
});

describe('two rows exchanged', () => {
  const load = plan({}).trucks[0]!;
  const rows = loadRowsOf(problem, load.placements);

  it('and exchanged again are the load as it was', () => {
    fc.assert(
      fc.property(fc.nat(rows.length - 1), fc.nat(rows.length - 1), (i, j) => {
        const once = swapRows(problem, load, i, j);
        const twice = swapRows(problem, once.load, i, j);
        expect(twice.load.placements).toEqual(load.placements);
        expect(twice.breaches).toEqual([]);
        expect(once.load.massKg).toBeCloseTo(load.massKg, 6);
        expect(once.load.usedLengthMm).toBe(load.usedLengthMm);
      }),
    );
  });

  it('are named where they break the unloading order', () => {
    const { breaches } = swapRows(problem, load, 0, rows.length - 1);
    expect(new Set(breaches.map((each) => each.code))).toEqual(new Set(['order']));
  });

  it('have to be rows of the load', () => {
    expect(() => swapRows(problem, load, 0, rows.length)).toThrow(RangeError);
  });
});
