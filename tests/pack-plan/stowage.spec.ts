import { loadIntegerProgramSolver } from '#runtime';
import { drawStowingStep, renderMarkup, wholePlanHtml } from '#drawings';
import { type PackPlan, type SolveLimits, type TruckResultOne, makePackPlan } from '#pack-plan';
import { readTourFile } from '#tour-file';
import { demoTour, writtenDemoTour } from '../support/demo-tour.js';

/** The least inside measures of a 40-ft container as they are remembered, and a load for each metre that is made up. */
const container = {
  model: 'Sea container 40 ft',
  kind: 'sea container',
  innerLengthMm: 11998,
  innerWidthMm: 2330,
  innerHeightMm: 2350,
  doorHeightMm: 2261,
  payloadKg: 26000,
  maxEndOffsetMm: 600,
  maxSideOffsetMm: 150,
  maxKgPerMetre: 3000,
};

const shippedBy =
  (trucks: readonly string[], more: object = {}) =>
  (file: any) => {
    file.catalogue.trucks.push({ ...container, ...more });
    for (const id of ['C1', 'C2']) file.items.push({ id, kind: 'truck', depot: 'Ferry Lane', model: container.model });
    file.tour.trucks = [...trucks];
  };

describe('a tour by sea', () => {
  let limits: SolveLimits;
  let plan: PackPlan;
  let first: TruckResultOne;
  const file = demoTour(shippedBy(['C1', 'C2']));
  beforeAll(async () => {
    limits = { now: () => 0, integerProgram: await loadIntegerProgramSolver(), timeLimitSeconds: 5 };
    plan = makePackPlan(file, 'quayside', limits);
    first = plan.truck.trucks[0]!;
  });

  it('goes into its containers whole, and no checker finds a fault', () => {
    expect(plan.truck.leftOver).toEqual([]);
    expect(plan.truck.mismatches ?? []).toEqual([]);
    expect(plan.findings.map((each) => each.code)).not.toContain('checker-disagrees');
    expect(plan.truck.trucks.map((each) => each.kind)).toEqual(['sea container', 'sea container']);
  });

  it('is stowed in steps that hold every piece once, each on what stands already', () => {
    const order = first.rows.flatMap((each) => each.pieces);
    expect(order).toEqual(first.loadingOrder);
    const at = new Map(first.placements.map((each) => [each.id, each]));
    order.forEach((id, index) => {
      const piece = at.get(id)!;
      if (piece.zMm === 0) return;
      const below = order.slice(0, index).map((each) => at.get(each)!);
      expect(below.some((each) => each.zMm + each.heightMm === piece.zMm)).toBe(true);
    });
  });

  it('is held against its limits, every metre of it', () => {
    const { stowage } = first;
    expect(stowage!.heaviestMetreKg).toBeLessThanOrEqual(3000);
    // Added up again, metre by metre in steps of a centimetre.
    const on = (from: number) =>
      first.placements.reduce(
        (sum, each) =>
          sum + (each.massKg * Math.max(0, Math.min(each.xMm + each.alongMm, from + 1000) - Math.max(each.xMm, from))) / each.alongMm,
        0,
      );
    const most = Math.max(...Array.from({ length: 1100 }, (_, index) => on(10 * index)));
    expect(most).toBeLessThanOrEqual(stowage!.heaviestMetreKg + 1e-6);
    expect(on(stowage!.heaviestMetreFromMm)).toBeCloseTo(stowage!.heaviestMetreKg, 6);
    expect(Math.abs(stowage!.endOffsetMm)).toBeLessThanOrEqual(600);
    expect(plan.findings.map((each) => each.code)).not.toContain('no-axle-figures');
  });

  it('is drawn step by step: what goes in now is named, what comes later is not there', () => {
    const drawn = renderMarkup(drawStowingStep(first, 1));
    const named = [...drawn.matchAll(/class="mono tiny[^>]*>([^<]+)</g)].map((each) => each[1]!).sort();
    expect(named).toEqual([...first.rows[1]!.pieces].sort());
    const faces = [...drawn.matchAll(/class="(piece|new)"/g)].length;
    expect(faces).toBe(3 * (first.rows[0]!.pieces.length + first.rows[1]!.pieces.length));
  });

  it('has a sheet with every step and every limit, and no word of axles', () => {
    const sheet = wholePlanHtml({ plan, revision: null })
      .split('<h1>')
      .find((each) => each.startsWith('Sea container C1'))!;
    expect(sheet).toContain('Stow in this order');
    expect(sheet).toContain('the plate decides');
    expect([...sheet.matchAll(/aria-label="Step /g)]).toHaveLength(first.rows.length);
    expect(sheet).not.toContain('No axle figures');
  });

  it('says which limits are not on file', () => {
    const open = makePackPlan(demoTour(shippedBy(['C1', 'C2'], { maxKgPerMetre: undefined })), 'quayside', limits);
    expect(open.truck.trucks[0]!.stowage!.mostKgPerMetre).toBeNull();
    expect(wholePlanHtml({ plan: open, revision: null })).toContain('Not compared, for no limit is on file: on the metre from');
  });

  it('takes what the trucks of the tour leave, and nothing where they leave nothing', () => {
    const both = makePackPlan(demoTour(shippedBy(['T2', 'C1', 'C2'])), 'quayside', limits);
    expect(both.truck.leftOver).toEqual([]);
    expect(both.truck.trucks.map((each) => each.kind ?? 'truck').slice(0, 2)).toEqual(['truck', 'sea container']);
    expect(both.truck.mismatches ?? []).toEqual([]);
    const enough = makePackPlan(demoTour(shippedBy(['T1', 'T2', 'C1'])), 'quayside', limits);
    expect(enough.truck.trucks.every((each) => each.kind === undefined)).toBe(true);
  });
});

describe('a model of a load space', () => {
  it.each([
    [
      {
        axles: [
          { group: 'front', xMm: 0 },
          { group: 'rear', xMm: 4000 },
        ],
      },
      'catalogue.trucks[2].axles',
    ],
    [{ kind: 'truck', maxEndOffsetMm: undefined }, 'catalogue.trucks[2].maxKgPerMetre'],
    [{ kind: 'barge' }, 'catalogue.trucks[2].kind'],
  ])('is refused with %j', (more, field) => {
    const read = readTourFile(writtenDemoTour(shippedBy(['C1'], more)));
    expect(read.ok ? [] : read.error.map((each) => each.field)).toContain(field);
  });
});
