import { loadIntegerProgramSolver } from '#runtime';
import { demoTour, sentencesOf, writtenDemoTour } from '../../../tests/support/demo-tour.js';
import { readTourFile } from '#tour-file';
import { type PackPlan, makePackPlan } from '#pack-plan';
import { checkPlan } from '../check/index.js';

describe('what goes with hoists, and frames', () => {
  let plan: (change: (file: any) => void) => PackPlan;
  beforeAll(async () => {
    const integerProgram = await loadIntegerProgramSolver();
    plan = (change) => {
      const file = demoTour(change);
      const made = makePackPlan(file, 'quayside', { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
      // The second opinion counts by an algebra of its own.
      expect(checkPlan(file, made).filter((each) => each.check === 'hardware' || each.check === 'loads')).toEqual([]);
      return made;
    };
  });
  const fitted = (made: PackPlan, ...models: string[]) =>
    models.map((model) => made.hardware.lines.find((each) => each.key === model)?.fitted ?? 0);

  it('is counted for the hoists of this kit alone, a controller more where one runs no more', () => {
    const six = ['Motor cable 20 m', 'Controller of eight', 'Handset of eight'];
    expect(
      fitted(
        plan(() => undefined),
        ...six,
      ),
    ).toEqual([6, 1, 1]);
    // Of Main left and its mirror the front hoists come with the venue.
    expect(
      fitted(
        plan((file) => (file.tour.shows[0].hangs[0].picks[0].kitBy = 'venue')),
        ...six,
      ),
    ).toEqual([4, 1, 1]);
    const runs = (hoists: number) => plan((file) => (file.catalogue.controls[0].hoists = hoists));
    expect(fitted(runs(6), ...six)).toEqual([6, 1, 1]);
    expect(fitted(runs(5), ...six)).toEqual([6, 2, 2]);
    expect(fitted(runs(1), ...six)).toEqual([6, 6, 6]);
  });

  it('has cells where the regime says how far one may read, and no others', () => {
    expect(
      fitted(
        plan((file) => delete file.loadRules[0].reading),
        'Load cell 3.25 t',
      ),
    ).toEqual([0]);
  });

  it('says what it cannot count, with what to fill in', () => {
    const without = plan((file) => {
      delete file.catalogue.hoists[0].chainBag;
      delete file.catalogue.hoists[0].controller;
    });
    expect(sentencesOf(without, 'control-not-counted')).toEqual([
      'Chain hoist 2.5 t (6 hoists): no chain bag or controller on file with the model. Count by hand what goes with the hoists, or name it with the model of hoist.',
    ]);
    expect(
      sentencesOf(
        plan(() => undefined),
        'control-not-counted',
      ),
    ).toEqual([]);
  });

  it('is missing by number, and why a piece is out of use', () => {
    const short = plan((file) => (file.items.find((each: any) => each.id === 'MC-1').count = 6));
    expect(sentencesOf(short, 'hardware-missing')).toEqual([
      'motor cable (Motor cable 20 m): 1 missing from 2027-03-01 to 2027-03-17. Wanted: 7, 6 to travel and 1 spare. To be had: 6.',
    ]);
    const failed = plan((file) => {
      const found = file.items.find((each: any) => each.id === 'LC-6');
      Object.assign(found, { examinations: [{ ...found.examinations[0], outcome: 'fail' }] });
    });
    expect(sentencesOf(failed, 'hardware-missing')).toEqual([
      expect.stringMatching(
        /^load cell \(Load cell 3.25 t\): 1 missing .* LC-6 \(1\) is out of use: .*LC-7 \(1\) is out of use: quarantined: reads 4 % high/,
      ),
    ]);
    expect(failed.uses.map((each) => each.item)).not.toContain('LC-6');
  });

  it('is booked: serials for itself, of batches what is taken', () => {
    const { uses } = plan(() => undefined);
    expect(uses.filter(({ item }) => /^(LC|CO|MC|CB|TL|HS|ES|CC)-/.test(item))).toEqual(
      expect.arrayContaining([
        { item: 'LC-6', count: null },
        { item: 'CO-1', count: null },
        { item: 'MC-1', count: 7 },
        { item: 'CB-1', count: 4 },
        { item: 'CB-2', count: 2 },
        { item: 'TL-1', count: 3 },
        { item: 'HS-1', count: 2 },
        { item: 'ES-1', count: 2 },
        { item: 'CC-1', count: 1 },
      ]),
    );
    expect(uses.map((each) => each.item)).not.toContain('LC-7');
  });

  const joins =
    (model: string | undefined, more: object = {}) =>
    (file: any) => {
      file.catalogue.frames.push({
        ...{ model: 'Frame P to D', system: 'Saltmarsh rig', massKg: 12 },
        pins: [
          { role: 'front link', pin: 'Link pin 12', count: 2, stowed: 'box' },
          { role: 'rear link', pin: 'Link pin 10', count: 1, stowed: 'trunk' },
        ],
        ...more,
      });
      const figures = { massKg: 12, frontHeightMm: 90, rearHeightMm: 90, depthMm: 500, cgBehindMm: 250, cgBelowMm: 45, rearLeverMm: 500 };
      file.systems[0].adapters = [{ id: 'P to D', joins: ['Plover', 'Dunlin'], ...figures, ...(model === undefined ? {} : { model }) }];
    };

  it('counts frames between boxes with their pins: the frame brings those of its upper joint, the box below its own', () => {
    // One frame in Main left and one in its mirror, none in Centre. Two front pins and one rear pin more for each; a joint set for each hang is spare still.
    const made = plan(joins('Frame P to D'));
    expect(fitted(made, 'Frame P to D', 'Link pin 12', 'Link pin 10', 'Lock pin 8')).toEqual([2, 124, 62, 60]);
    expect(made.hardware.lines.find((each) => each.key === 'Frame P to D')).toMatchObject({
      item: 'frame',
      loose: 2,
      missing: 2,
      onHand: 0,
    });
    expect(made.hardware.lines.filter((each) => each.difference !== 0)).toEqual([]);
    expect(sentencesOf(made, 'frame-not-counted')).toEqual([]);
    expect(sentencesOf(plan(joins(undefined)), 'frame-not-counted')).toEqual([
      '2 frames P to D with the pins of the joint above each: its model is not on file. Count them by hand, or name the model of frame in the rigging system.',
    ]);
  });

  it('puts a frame that rides on its cart into the mass and the height of that cart, and its pins with it', () => {
    const [without, made] = [plan(() => undefined), plan(joins('Frame P to D', { onCartMm: 110 }))];
    const load = (of: PackPlan) => of.carts.loads.find((each) => each.id === 'Main left 21-24')!;
    expect(load(made).frames).toEqual([{ model: 'Frame P to D', position: 23, massKg: 12, onCartMm: 110 }]);
    expect(load(made).massKg - load(without).massKg).toBeCloseTo(12, 9);
    const standing = (of: PackPlan) => of.truck.trucks.flatMap((each) => each.placements).find((each) => each.id === load(of).cart)!;
    expect(standing(made).massKg - standing(without).massKg).toBeCloseTo(12, 9);
    expect(standing(made).heightMm - standing(without).heightMm).toBe(110);
    expect(made.hardware.lines.find((each) => each.key === 'Frame P to D')).toMatchObject({ withCart: 2, loose: 0 });
    // The front pins stay in the frame; the rear pin lies in the trunk.
    expect(made.hardware.lines.find((each) => each.key === 'Link pin 12')).toMatchObject({ withCart: 4, loose: 6, difference: 0 });
    expect(made.hardware.lines.find((each) => each.key === 'Link pin 10')).toMatchObject({ withCart: 0, loose: 5, difference: 0 });
  });

  it('compares the rated load of a frame with what hangs below it: at the limit nothing, a kilogram beyond a stop, without one a sentence', () => {
    // Main left 23 and 24: two Dunlin of 58.5 kg; the base of the cart hangs there too, and half of what is rated counts over people.
    const base = demoTour().catalogue.carts[0]!;
    const carriesKg = 2 * 58.5 + (base.baseMassKg ?? base.massKg);
    const rated = (kg: number) => ({ ratedLoad: { value: kg, unit: 'kg' } });
    const said = (more: object, code: string) => sentencesOf(plan(joins('Frame P to D', more)), code);
    expect(said(rated(2 * carriesKg), 'frame-over-rated')).toEqual([]);
    expect(said(rated(2 * carriesKg - 1), 'frame-over-rated')).toEqual([
      `Main left: Frame P to D carries up to ${carriesKg} kg below it, a cart’s base included; its rated ${2 * carriesKg - 1} kg times 0.5 of the load rule are ${carriesKg - 0.5} kg.`,
      expect.stringMatching(/^Main right: /),
    ]);
    expect(said(rated(2 * carriesKg), 'frame-without-rated-value')).toEqual([]);
    expect(said({}, 'frame-without-rated-value')).toEqual([
      `Main left: Frame P to D carries up to ${carriesKg} kg below it, and no rated load of it is on file: compared with nothing. Ask the maker.`,
      expect.stringMatching(/^Main right: /),
    ]);
  });

  it('hangs a tilt plate at the grid, counts it and its pins', () => {
    const made = plan((file) => (file.tour.shows[0].hangs[2].frames = ['Tilt plate 14']));
    const centre = made.picks.hangs.find((each) => each.hang === 'Centre')!;
    const before = plan(() => undefined).picks.hangs.find((each) => each.hang === 'Centre')!;
    expect(centre.massKg - before.massKg).toBeCloseTo(9, 9);
    expect(fitted(made, 'Tilt plate 14', 'Link pin 12')).toEqual([1, 122]);
  });

  it('is in the mass of the case that it lies in', () => {
    const mass = (of: PackPlan, id: string) => of.truck.trucks.flatMap((each) => each.placements).find((each) => each.id === id)?.massKg;
    // Trunk 42 kg; shackles 16 x 0.62, slings 10 x 0.9; pins 20 x and 12 x; cables 8 x 5.2 and 2 x 4.1; 2 x 1.3, 2 x 1.5; tag lines 4 x 1.6.
    const [now, bare] = [
      plan(() => undefined),
      plan((file) => (file.items = file.items.filter((each: any) => !['MC-1', 'CC-1', 'HS-1', 'ES-1', 'TL-1'].includes(each.id)))),
    ];
    expect(mass(now, 'HT-1')! - mass(bare, 'HT-1')!).toBeCloseTo(8 * 5.2 + 2 * 4.1 + 2 * 1.3 + 2 * 1.5 + 4 * 1.6, 9);
  });

  it('tells of failed cells and frames that ride along', () => {
    const made = plan((file) =>
      Object.assign(
        file.items.find((each: any) => each.id === 'TP-1'),
        { state: 'in repair', reason: 'bent' },
      ),
    );
    expect(sentencesOf(made, 'tagged-freight')).toEqual(
      expect.arrayContaining([expect.stringMatching(/GC-2 holds TP-1/), expect.stringMatching(/HC-2 holds H-05, LC-7/)]),
    );
  });

  it('refuses what is named for what it is not', () => {
    const faults = (change: (file: any) => void) => {
      const read = readTourFile(writtenDemoTour(change));
      return read.ok ? [] : read.error.map(({ field, wanted }) => `${field}: ${wanted}`);
    };
    expect(faults((file) => (file.catalogue.hoists[0].motorCable = 'Control cable 25 m'))).toEqual([
      expect.stringMatching(/^catalogue\.hoists\[0\]\.motorCable: a control model whose part is motor cable/),
    ]);
    expect(faults((file) => delete file.catalogue.controls[0].hoists)).toEqual(['catalogue.controls[0].hoists: how many hoists it runs']);
    expect(faults((file) => (file.catalogue.controls[1].hoists = 2))).toEqual([
      'catalogue.controls[1].hoists: nothing, unless it is a controller',
    ]);
    expect(faults((file) => (file.catalogue.controls[0].with[0].model = 'Controller of eight'))).toEqual([
      expect.stringMatching(/^catalogue\.controls\[0\]\.with\[0\]\.model: a control model that is no controller/),
    ]);
    expect(faults((file) => (file.systems[0].tagLines = ['Chain bag 24 m']))).toEqual([
      expect.stringMatching(/^systems\[0\]\.tagLines\[0\]: an aid model whose part is tag line/),
    ]);
    expect(faults((file) => (file.tour.shows[0].hangs[0].frames = ['none']))).toEqual([
      expect.stringMatching(/hangs\[0\]\.frames\[0\]: a frame model/),
    ]);
  });

  it('reads a file from before there was any of it', () => {
    const read = readTourFile(
      writtenDemoTour((file) => {
        for (const kind of ['frames', 'cells', 'controls', 'aids']) delete file.catalogue[kind];
        for (const part of ['motorCable', 'chainBag', 'cell', 'controller']) delete file.catalogue.hoists[0][part];
        delete file.systems[0].tagLines;
        file.items = file.items.filter((each: any) => !['frame', 'cell', 'control', 'aid'].includes(each.kind));
        file.tour.spares = file.tour.spares.filter((each: any) => !/Motor|Handset|Emergency/.test(each.item));
      }),
    );
    expect(read.ok && read.value.catalogue).toMatchObject({ frames: [], cells: [], controls: [], aids: [] });
  });
});
