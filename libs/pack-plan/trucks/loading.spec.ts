import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { loadIntegerProgramSolver } from '#runtime';
import { type KeptPiece, type LoadingAct, type TourFile, afterAct, noLoading, readTourFile } from '#tour-file';
import { verifyTruckPack } from '#truck-pack';
import { type PackPlan, type TruckResultOne, changedInputs, makePackPlan, replanTrucks, swapOf } from '#pack-plan';
import type { SolveLimits } from '../contract/index.js';
import { gatherInputs } from '../inputs/index.js';
import { truckTask } from './plan-truck.js';
import { blockedInOrder } from './truck-rows.js';

const written = JSON.parse(readFileSync('tests/examples/demo-tour.json', 'utf8')) as object;

function tourFile(change: (file: any) => void = () => undefined): TourFile {
  const copy = structuredClone(written);
  change(copy);
  const read = readTourFile(copy);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const wanting = (file: TourFile, ...acts: LoadingAct[]): TourFile => ({
  ...file,
  tour: {
    ...file.tour,
    shows: file.tour.shows.map((show) =>
      show.id === 'quayside' ? { ...show, loading: acts.reduce(afterAct, show.loading ?? noLoading) } : show,
    ),
  },
});
const placesOf = (truck: TruckResultOne, pieces: readonly string[], loaded = false): KeptPiece[] =>
  truck.placements
    .filter((each) => pieces.includes(each.id))
    .map(({ id, xMm, yMm, zMm, turned }) => ({ piece: id, truck: truck.id, xMm, yMm, zMm, turned, loaded }));
const by = { by: 'Ana', on: '2027-02-26' };

describe('what is wanted of the trucks', () => {
  const file = tourFile();
  let limits: SolveLimits;
  let plan: PackPlan;
  let truck: TruckResultOne;
  beforeAll(async () => {
    limits = { now: () => 0, integerProgram: await loadIntegerProgramSolver(), timeLimitSeconds: 5 };
    plan = makePackPlan(file, 'quayside', limits);
    truck = plan.truck.trucks[0]!;
  });

  /** The checker's word on the trucks of a plan. */
  const violations = (of: TourFile, made: PackPlan) => {
    const { problem, wishes } = truckTask(gatherInputs(of, 'quayside'), made.carts);
    const { status, trucks, leftOver, bound } = made.truck;
    const answer = { status, leftOver, bound, waived: wishes.waived, trucks: trucks.map((each) => ({ ...each, axles: {} })) };
    return verifyTruckPack(problem!, answer as never, wishes).filter((each) => each.code !== 'claim' && each.code !== 'status');
  };
  const rowsOf = (made: PackPlan, id: string) => made.truck.trucks.find((each) => each.id === id)!;

  it('keeps any row, or all that is loaded so far, exactly where it stands while something else changes, and breaks no rule', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: truck.rows.length - 1 }), fc.boolean(), (index, loaded) => {
        const pieces = truck.rows.slice(loaded ? 0 : index, index + 1).flatMap((row) => row.pieces);
        const wanted = wanting(
          tourFile(
            (copy) => (copy.tour.freight = copy.tour.freight.filter((each: any) => each.case !== 'WB-8' || pieces.includes('WB-8'))),
          ),
          { kind: 'keep', pieces: placesOf(truck, pieces, loaded) },
        );
        const again = replanTrucks(wanted, plan, limits);
        const now = rowsOf(again, truck.id);
        for (const { piece, truck: _truck, loaded: _loaded, ...place } of placesOf(truck, pieces))
          expect(now.placements.find((each) => each.id === piece)).toMatchObject(place);
        expect(again.truck.leftOver).toEqual([]);
        expect(violations(wanted, again)).toEqual([]);
      }),
      { numRuns: 8, seed: 6 },
    );
  });

  it('leaves carts, picks and dates alone, and is stale only when the wishes change afterwards', () => {
    const wanted = wanting(file, { kind: 'keep', pieces: placesOf(truck, truck.rows[1]!.pieces) });
    expect(changedInputs(plan, wanted)).toEqual([{ code: 'new', part: { code: 'loading' } }]);
    const again = replanTrucks(wanted, plan, limits);
    expect(changedInputs(again, wanted)).toEqual([]);
    expect(again.carts).toEqual(plan.carts);
    expect(changedInputs(again, file)).toEqual([{ code: 'gone', part: { code: 'loading' } }]);
    expect(changedInputs(again, wanting(wanted, { kind: 'end', group: 'Cable', end: 'door' }))).toEqual([
      { code: 'changed', part: { code: 'loading' } },
    ]);
    const elsewhere = { ...wanted, tour: { ...wanted.tour, shows: wanted.tour.shows.map((each) => ({ ...each })) } };
    expect(changedInputs(makePackPlan(file, 'fenland', limits), elsewhere)).toEqual([]);
  });

  it('puts a group at the door or at the nose', () => {
    for (const [end, at] of [
      ['door', 0],
      ['nose', -1],
    ] as const) {
      const again = replanTrucks(wanting(file, { kind: 'end', group: 'Amplifiers', end }), plan, limits);
      const holding = again.truck.trucks.filter((each) => each.placements.some((one) => one.group === 'Amplifiers'));
      expect(holding.length).toBeGreaterThan(0);
      for (const each of holding) expect(each.placements.find((one) => one.id === each.unloadingOrder.at(at))!.group).toBe('Amplifiers');
      expect(again.truck.dockOrder![0]!.first).toBe(end === 'door' ? 'Amplifiers' : 'Hoists, Hardware');
      expect(again.truck.leftOver).toEqual([]);
    }
  });

  it('takes a case more along, names who did, and books it', () => {
    const more = tourFile((copy) => copy.items.push({ id: 'WB-9', kind: 'case', model: 'Workbox', depot: 'Ferry Lane', contentsKg: 80 }));
    const wanted = wanting(more, { kind: 'take', case: 'WB-9', ...by });
    const again = replanTrucks(wanted, plan, limits);
    expect(again.truck.trucks.flatMap((each) => each.placements.map((one) => one.id))).toContain('WB-9');
    expect(again.truck.notes).toContainEqual({
      fact: { code: 'taken', piece: 'WB-9', by: 'Ana', on: '2027-02-26' },
      kind: 'taken',
      subject: 'WB-9',
      sentence: 'WB-9 was taken along at the dock (Ana, 2027-02-26).',
    });
    expect(again.uses).toContainEqual({ item: 'WB-9', count: null });
  });

  it('says of a wish that can no longer be followed why not', () => {
    const [kept] = placesOf(truck, [truck.rows[0]!.pieces[0]!]);
    const wanted = wanting(
      file,
      { kind: 'keep', pieces: [{ ...kept!, piece: 'WB-77' }] },
      { kind: 'waive', piece: 'WB-78', reason: 'late', ...by },
      { kind: 'take', case: 'WB-79', ...by },
      { kind: 'end', group: 'Choir', end: 'door' },
    );
    const again = replanTrucks(wanted, plan, limits);
    expect(again.findings.filter((each) => each.code === 'wish-without-effect').map((each) => each.subject)).toEqual([
      'WB-77',
      'WB-78',
      'WB-79',
      'Choir',
    ]);
    expect(again.truck.trucks.map((each) => each.placements)).toEqual(plan.truck.trucks.map((each) => each.placements));
  });

  it('plans nothing when what is kept breaks a rule, and names the pieces', () => {
    const [first, second] = truck.placements.filter((each) => each.zMm === 0);
    const pieces = placesOf(truck, [first!.id, second!.id]).map((each) => ({ ...each, xMm: 0, yMm: 0 }));
    const again = replanTrucks(wanting(file, { kind: 'keep', pieces }), plan, limits);
    expect(again.truck.refused!.map((each) => each.sentence).join()).toContain('overlaps');
    expect(again.findings.some((each) => each.code === 'kept-breaks-rule' && each.weight === 'stop')).toBe(true);
    expect(again.truck.trucks).toEqual([]);
    expect(again.truck.leftOver.length).toBeGreaterThan(40);
  });

  it('tells what two exchanged rows do to the axles and to the order, and exchanges them back', () => {
    const last = truck.rows.length;
    const far = swapOf(file, plan, truck.id, 1, last);
    expect(far.breaches.length).toBeGreaterThan(0);
    expect(far.breaches.find((each) => each.mayBeWaived)!.sentence).toMatch(/comes off later/);
    const drive = far.axles.find((each) => each.axle === 'drive axle')!;
    expect(drive.beforeKg).toBeCloseTo(truck.axles.find((each) => each.axle === 'drive axle')!.loadKg, 6);
    expect(drive.afterKg).not.toBeCloseTo(drive.beforeKg, 1);
    // Rows of one group: nothing is broken, and what stood there stands there again after a second exchange.
    const same = truck.rows.findIndex((row, index) => row.label === truck.rows[index + 1]?.label) + 1;
    expect(same).toBeGreaterThan(0);
    const near = swapOf(file, plan, truck.id, same, same + 1);
    expect(near.breaches.filter((each) => each.mayBeWaived)).toEqual([]);
  });

  it('gives a load-out order that can be carried out, the last off first in, and the dock order of the trucks', () => {
    expect(plan.truck.trucks.length).toBeGreaterThan(0);
    for (const each of plan.truck.trucks) {
      expect([...each.loadOutOrder!].sort()).toEqual([...each.loadingOrder].sort());
      expect(blockedInOrder(each.placements, each.loadOutOrder!)).toBeUndefined();
      expect(blockedInOrder(each.placements, [...each.loadOutOrder!].reverse())).toBeDefined();
      const firstOff = new Map(each.placements.map((one) => [one.id, one.firstOff]));
      const places = each.loadOutOrder!.map((id) => firstOff.get(id)!);
      expect(places).toEqual([...places].sort((a, b) => b - a));
    }
    expect(plan.truck.dockOrder!.map((each) => each.truck).sort()).toEqual(plan.truck.trucks.map((each) => each.id).sort());
    expect(plan.truck.dockOrder![0]!.first).toBe('Hoists');
  });
});
