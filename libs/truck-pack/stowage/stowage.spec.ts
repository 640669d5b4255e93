import fc from 'fast-check';
import { type Piece, type Truck, readTruckCase } from '../case/index.js';
import { verifyTruckPack } from '../check/index.js';
import { solveStowage } from './solve-stowage.js';

const box: Truck = {
  id: 'C1',
  kind: 'sea container',
  innerLengthMm: 5867,
  innerWidthMm: 2330,
  innerHeightMm: 2350,
  doorHeightMm: 2261,
  payloadKg: 20_000,
  blocked: [],
};
const piece = (id: string, more: Partial<Piece> = {}): Piece => ({
  id,
  lengthMm: 1200,
  widthMm: 1100,
  heightMm: 1000,
  massKg: 300,
  mayTurn: true,
  firstOff: 0,
  floorOnly: false,
  maxOnTopKg: 0,
  ...more,
});
const pieces = (count: number, more: Partial<Piece> = {}): Piece[] =>
  Array.from({ length: count }, (_, index) => piece(`P${index + 1}`, more));

const caseOf = (trucks: readonly Truck[], freight: readonly Piece[]) => {
  const read = readTruckCase({ trucks, pieces: freight, minSupport: 1 });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
};

describe('stowing containers and pallets', () => {
  it('puts two abreast and nothing on what bears nothing, from the nose', () => {
    const answer = solveStowage(caseOf([box], pieces(8)), { work: 40 });
    expect(answer.leftOver).toEqual([]);
    expect(answer.trucks[0]!.usedLengthMm).toBeLessThan(4900);
    expect(answer.trucks[0]!.placements.every((each) => each.zMm === 0)).toBe(true);
  });

  it('stacks what bears it, up to the height of the door', () => {
    const stacked = solveStowage(caseOf([box], pieces(16, { maxOnTopKg: 300 })), { work: 40 });
    expect(stacked.leftOver).toEqual([]);
    const high = solveStowage(caseOf([{ ...box, doorHeightMm: 1999 }], pieces(16, { maxOnTopKg: 300 })), { work: 40 });
    expect(high.trucks[0]!.placements.every((each) => each.zMm === 0)).toBe(true);
    expect(high.leftOver.length).toBeGreaterThan(0);
  });

  it('goes on in the next one, and says what no one takes and why', () => {
    const freight = [...pieces(16), piece('tall', { heightMm: 2300 })];
    const answer = solveStowage(caseOf([box, { ...box, id: 'C2' }], freight), { work: 40 });
    expect(answer.trucks.map((each) => each.id)).toEqual(['C1', 'C2']);
    expect(answer.leftOver).toMatchObject([{ id: 'tall', code: 'too-high', heightMm: 2300, mostMm: 2261 }]);
  });

  it('knows no order of unloading inside, as a truck does', () => {
    const freight = pieces(8).map((each, index) => ({ ...each, firstOff: index }));
    const problem = caseOf([box], freight);
    const answer = solveStowage(problem, { work: 40 });
    expect(answer.leftOver).toEqual([]);
    expect(answer.mismatch).toBeUndefined();
    const asTruck = { ...problem, trucks: [{ ...box, kind: 'truck' as const }] };
    const order = (reversed: boolean) => ({
      ...answer,
      trucks: answer.trucks.map((load) => ({
        ...load,
        placements: reversed
          ? load.placements.map((each, index) => ({ ...load.placements.at(-1 - index)!, id: each.id }))
          : load.placements,
      })),
    });
    const said = [false, true].flatMap((reversed) => verifyTruckPack(asTruck, order(reversed)).map((each) => each.code));
    expect(said).toContain('order');
  });

  it('keeps payload, mass a metre and the centre of the load', () => {
    const limits = { payloadKg: 2100, maxKgPerMetre: 600, maxEndOffsetMm: 200, maxSideOffsetMm: 300 };
    const answer = solveStowage(caseOf([{ ...box, ...limits }], pieces(9)), { work: 40 });
    expect(answer.mismatch).toBeUndefined();
    expect(answer.trucks[0]!.massKg).toBeLessThanOrEqual(2100);
    expect(answer.trucks[0]!.placements.length).toBeGreaterThanOrEqual(6);
  });

  it('leaves the contour of an air pallet free', () => {
    const pallet: Truck = {
      ...box,
      id: 'A1',
      kind: 'air pallet',
      innerLengthMm: 3040,
      innerWidthMm: 2300,
      innerHeightMm: 1600,
      doorHeightMm: undefined,
      payloadKg: 6000,
      blocked: [{ xMm: 0, yMm: 0, zMm: 900, lengthMm: 3040, widthMm: 500, heightMm: 700 }],
    };
    const answer = solveStowage(caseOf([pallet], pieces(6, { lengthMm: 1000, widthMm: 900, heightMm: 900 })), { work: 40 });
    expect(answer.trucks[0]!.placements.length).toBe(6);
    const high = solveStowage(caseOf([pallet], pieces(6, { lengthMm: 1000, widthMm: 900, heightMm: 1000 })), { work: 40 });
    expect(high.mismatch).toBeUndefined();
    expect(high.trucks[0]!.placements.every((each) => each.yMm >= 500)).toBe(true);
  });

  it('agrees with the checker on any such freight, and equal work gives the equal load', () => {
    const size = fc.integer({ min: 4, max: 14 }).map((each) => each * 100);
    const some = fc.array(
      fc.record({
        lengthMm: size,
        widthMm: size,
        heightMm: size,
        massKg: fc.integer({ min: 20, max: 500 }),
        mayTurn: fc.boolean(),
        floorOnly: fc.boolean(),
        maxOnTopKg: fc.integer({ min: 0, max: 600 }),
        firstOff: fc.integer({ min: 0, max: 3 }),
      }),
      { minLength: 1, maxLength: 20 },
    );
    const limits = fc.record({
      payloadKg: fc.integer({ min: 500, max: 8000 }),
      maxKgPerMetre: fc.integer({ min: 200, max: 3000 }),
      maxEndOffsetMm: fc.integer({ min: 100, max: 1500 }),
    });
    fc.assert(
      fc.property(some, limits, (freight, given) => {
        const problem = caseOf(
          [{ ...box, ...given }],
          freight.map((each, index) => piece(`P${index}`, each)),
        );
        const answer = solveStowage(problem, { work: 6 });
        expect(answer.mismatch).toBeUndefined();
        expect(solveStowage(problem, { work: 6 })).toEqual(answer);
      }),
      { numRuns: 25, seed: 3 },
    );
  });
});

describe('the case of a load space without rows', () => {
  it.each([
    [{ rigid: { frontAxleXMm: 0, rearAxleXMm: 4000 } }, 'trucks[0].rigid'],
    [{ kind: 'truck', maxKgPerMetre: 500 }, 'trucks[0].maxKgPerMetre'],
  ])('refuses %j', (more, field) => {
    const read = readTruckCase({ trucks: [{ ...box, ...more }], pieces: [] });
    expect(read).toMatchObject({ ok: false, error: [{ field }] });
  });
});
