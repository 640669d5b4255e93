import { loadIntegerProgramSolver } from '#runtime';
import { demoTour, sentencesOf } from '../../../tests/support/demo-tour.js';
import type { TourFile } from '#tour-file';
import { type PackPlan, changedInputs, makePackPlan } from '#pack-plan';
import { wholeHardware } from '../landed/index.js';

describe('the hardware of the demo tour', () => {
  let plan: (file: TourFile, show?: string) => PackPlan;
  let demo: PackPlan;
  beforeAll(async () => {
    const integerProgram = await loadIntegerProgramSolver();
    plan = (file, show = 'quayside') => makePackPlan(file, show, { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
    demo = plan(demoTour());
  });

  /**
   * Counted by hand from the drawing: hangs of 24, 24 and 12 boxes on one grid each, two picks a hang, carts of four. Each box brings its own two front
   * link pins, one rear, one lock; the grids' pins lie in the trunk, so the pins of the three boxes 1 stay in their box.
   */
  it.each([
    // 60 joints: three at the grids, 57 between boxes. Spares: one joint set for each hang.
    [
      'Link pin 12',
      { fitted: 120, withBox: 120, withCart: 0, loose: 6, staysInBox: 6, spares: 6, onHand: 158, keptAtHome: 18, missing: 0 },
    ],
    ['Link pin 10', { fitted: 60, withBox: 60, withCart: 0, loose: 3, staysInBox: 3, spares: 3, onHand: 81, keptAtHome: 9, missing: 0 }],
    ['Lock pin 8', { fitted: 60, withBox: 60, withCart: 0, loose: 3, staysInBox: 3, spares: 3, onHand: 81, keptAtHome: 9, missing: 0 }],
    // Six picks: two shackles, one sling and one hoist each. Eight hoists, of which one is in quarantine and one out of date.
    ['Bow shackle 3.25', { fitted: 12, withBox: 0, withCart: 0, loose: 12, spares: 1, onHand: 16, missing: 0 }],
    ['Round sling 1 m', { fitted: 6, withBox: 0, withCart: 0, loose: 6, spares: 1, onHand: 10, missing: 0 }],
    ['Chain hoist 2.5 t', { fitted: 6, withBox: 0, withCart: 0, loose: 6, spares: 0, onHand: 6, missing: 0, trunks: ['HC-1', 'HC-2'] }],
    ['Grid 14', { fitted: 3, withBox: 0, withCart: 0, loose: 3, spares: 0, onHand: 4, missing: 0 }],
    // 15 of 17 carts, four base pins, four poles and a lid each; a loom for each cart load.
    ['Base pin 12', { fitted: 60, withBox: 0, withCart: 60, loose: 0, onHand: 80, keptAtHome: 8, missing: 0 }],
    ['Cart of four, pole', { fitted: 60, withBox: 0, withCart: 60, loose: 0, spares: 0, onHand: 68, missing: 0 }],
    ['Cart of four, lid', { fitted: 15, withBox: 0, withCart: 15, loose: 0, spares: 0, onHand: 17, missing: 0 }],
    ['Loom of four, 20 m', { fitted: 15, withBox: 0, withCart: 0, loose: 15, spares: 0, onHand: 17, missing: 0, trunks: ['CT-01'] }],
    // Six hoists on one controller of eight: a motor cable, a chain bag and a cell each; with the controller a cable, a handset, an emergency stop. One
    // tag line for each of three hangs. LC-7 failed and is not counted.
    ['Motor cable 20 m', { fitted: 6, loose: 6, spares: 1, onHand: 8, missing: 0, trunks: ['HT-1'] }],
    ['Chain bag 24 m', { fitted: 6, loose: 6, spares: 0, onHand: 8, missing: 0, trunks: ['HC-1', 'HC-2'] }],
    ['Load cell 3.25 t', { fitted: 6, loose: 6, spares: 0, onHand: 6, missing: 0, trunks: ['HC-1', 'HC-2'] }],
    ['Controller of eight', { fitted: 1, loose: 1, spares: 0, onHand: 2, missing: 0, trunks: ['HC-1'] }],
    ['Control cable 25 m', { fitted: 1, loose: 1, spares: 0, onHand: 2, missing: 0, trunks: ['HT-1'] }],
    ['Handset of eight', { fitted: 1, loose: 1, spares: 1, onHand: 2, missing: 0, trunks: ['HT-1'] }],
    ['Emergency stop on 10 m', { fitted: 1, loose: 1, spares: 1, onHand: 2, missing: 0, trunks: ['HT-1'] }],
    ['Tag line 20 m', { fitted: 3, loose: 3, spares: 0, onHand: 4, missing: 0, trunks: ['HT-1'] }],
  ])('counts %s as a hand does', (key, counted) => {
    expect(demo.hardware.lines.find((line) => line.key === key)).toMatchObject({ difference: 0, ...counted });
  });

  it('has a line for nothing else, and hoists and grids by serial', () => {
    expect(demo.hardware.lines).toHaveLength(19);
    expect(demo.hardware.chosen.filter((each) => each.kind === 'hoist')).toHaveLength(6);
    expect(demo.hardware.chosen.filter((each) => each.kind === 'grid')).toHaveLength(3);
  });

  it('works out spare hoists as spare pins: 18 uses at 0.01 are 0.18 losses, and two suffice for 99.9 % where one does for 98.6 %', () => {
    const { hardware } = plan(
      demoTour((file) => file.tour.spares.push({ item: 'Chain hoist 2.5 t', lossPerUse: 0.01, level: 0.999, stopsAShow: false })),
    );
    const line = hardware.lines.find((each) => each.item === 'hoist')!;
    expect(line).toMatchObject({ fitted: 6, spares: 2, levelWanted: 0.999, onHand: 6, missing: 2 });
    expect(line.levelReached).toBeCloseTo(Math.exp(-0.18) * (1 + 0.18 + 0.18 ** 2 / 2), 9);
  });

  it('says what rides with each cart, and takes it from the lots that are kept there', () => {
    for (const [key, each] of [
      ['Link pin 12', 8],
      ['Link pin 10', 4],
      ['Lock pin 8', 4],
      ['Base pin 12', 4],
      ['Cart of four, pole', 4],
      ['Cart of four, lid', 1],
    ] as const)
      expect(demo.hardware.lines.find((line) => line.key === key)!.carriers.map(({ count }) => count)).toEqual(Array(15).fill(each));
    expect(demo.hardware.lines.find((line) => line.key === 'Link pin 12')!.takenFrom).toEqual([
      { lot: 'FP-B', trunk: null, count: 120 },
      { lot: 'FP-1', trunk: 'HT-1', count: 12 },
    ]);
    expect(demo.uses.filter((each) => each.item.startsWith('FP-'))).toEqual([
      { item: 'FP-B', count: 120 },
      { item: 'FP-1', count: 12 },
    ]);
  });

  it('takes the pins of box 1 for the grid joint where the grid brings none', () => {
    const bare = plan(
      demoTour((file) => (file.catalogue.grids[0].pins = file.catalogue.grids[0].pins.filter((pin: any) => pin.role === 'lock'))),
    );
    const line = (key: string) => bare.hardware.lines.find((each) => each.key === key);
    expect(line('Link pin 12')).toMatchObject({ fitted: 120, withBox: 120, loose: 0, staysInBox: 0, difference: 0, spares: 6 });
    expect(line('Lock pin 8')).toMatchObject({ fitted: 60, withBox: 60, loose: 3, staysInBox: 3, difference: 0 });
  });

  it('says what cannot be covered with number, size and dates, and why a lot is out', () => {
    const short = plan(
      demoTour((file) => {
        Object.assign(
          file.items.find((each: any) => each.id === 'LP-1'),
          { state: 'quarantined', reason: 'bent' },
        );
        file.bookings.push({ item: 'SH-1', count: 4, from: '2027-03-08', to: '2027-03-10', tour: 'Town Fair, one day' });
      }),
    );
    expect(sentencesOf(short, 'hardware-missing')).toEqual([
      'lock pin (Lock pin 8, 8 x 40 mm): 6 missing from 2027-03-01 to 2027-03-17. Wanted: 66, 63 to travel and 3 spare. To be had: 60, for of 69 on hand 9 stay at home with their boxes and carts. LP-1 (12) is out of use: quarantined: bent.',
      'shackle (Bow shackle 3.25, 3.25 t): 1 missing from 2027-03-08 to 2027-03-10. Wanted: 13, 12 to travel and 1 spare. To be had: 12.',
    ]);
  });

  it('counts spares in date only: shackles that run out before the show are neither fitted nor spare', () => {
    const late = plan(demoTour((file) => (file.items.find((each: any) => each.id === 'SH-1').examinations[0].on = '2026-09-01')));
    expect(sentencesOf(late, 'hardware-missing')).toEqual([
      expect.stringMatching(/shackle \(Bow shackle 3.25, 3.25 t\): 13 missing .*SH-1 \(16\) is out of use: examination due on 2027-03-01/),
    ]);
    expect(late.uses.some((each) => each.item === 'SH-1')).toBe(false);
  });

  it('says so where travelling and fitted pins differ, and where the boxes cannot hold what is on file with them', () => {
    const file = demoTour((each) => {
      each.items = each.items.filter((item: any) => item.model !== 'Dunlin');
      for (const item of each.items) if (item.stack) item.stack = item.stack.filter((serial: string) => !serial.startsWith('D-'));
      each.bookings = [];
    });
    const without = plan(file);
    expect(sentencesOf(without, 'travelling-and-fitted-differ')[0]).toMatch(
      /front link pin \(Link pin 12\): 118 travel, less 6 that stay in their box, leaves 112\. 120 are fitted: 8 too few\. rear link pin .*lock pin .* was not found/,
    );
    expect(sentencesOf(without, 'kept-with-boxes-differs')).toContainEqual(expect.stringMatching(/Link pin 12: 138 on file .* take 122/));
    expect(sentencesOf(demo, 'kept-with-boxes-differs')).toEqual([]);
  });

  it('holds the chain of each hoist against the height of its point', () => {
    expect(demo.hardware.chains).toHaveLength(6);
    expect(demo.hardware.chains[0]).toMatchObject({ onFileM: 24, neededM: 15.2, enough: true });
    // Of the height below the point 1.7263 m are left to the chain (libs/pack-plan/room).
    expect(demo.hardware.chains[0]!.inBagAtTrimM).toBeCloseTo(24 - 1.7263063, 6);
    const high = plan(demoTour((file) => (file.tour.shows[0].hangs[0].pointHeightMm = 25_000)));
    expect(sentencesOf(high, 'chain-too-short')).toHaveLength(4);
    expect(sentencesOf(high, 'chain-too-short')[0]).toMatch(/Main left, hole C: H-\d\d has 24 m of chain on file and needs 25 m/);
    const limit = (pointHeightMm: number) =>
      sentencesOf(plan(demoTour((file) => (file.tour.shows[0].hangs[2].pointHeightMm = pointHeightMm))), 'chain-too-short');
    expect(limit(24_000)).toEqual([]);
    expect(limit(24_001)).toEqual([expect.stringContaining('has 24 m of chain on file and needs 24.001 m'), expect.anything()]);
    const unknown = plan(demoTour((file) => delete file.tour.shows[0].hangs[0].pointHeightMm));
    expect(sentencesOf(unknown, 'no-point-height')).toEqual([expect.stringContaining('2 hangs (Main left, Main right)')]);
  });

  it('reaches the level of the whole trunk with the lightest spares, and goes stale when a count changes what is known', () => {
    const { trunk, lines } = demo.hardware;
    expect(trunk).toMatchObject({ wanted: 0.97, least: 'mass', status: 'optimal' });
    expect(trunk.level).toBeGreaterThanOrEqual(0.97);
    expect(trunk.weight).toBeLessThan(trunk.equalShareWeight);
    // A loom of 17 kg is not carried as a spare; pins make up for it.
    expect(lines.find((line) => line.item === 'loom')!.spares).toBe(0);
    expect(lines.find((line) => line.item === 'cart base pin')!.spares).toBeGreaterThan(0);
    const later = demoTour((file) => (file.tour.spares[0].counted.losses = 30));
    expect(changedInputs(demo, later)).toEqual([{ code: 'changed', part: { code: 'spares' } }]);
    const learned = plan(later).hardware.lines[0]!;
    expect(learned.learned).toMatchObject({ counted: { losses: 30, uses: 9600 }, posteriorMean: 31 / 13_600 });
  });

  it('counts the steel of bridles, of a pull-back and of the secondary suspension too, the mirror’s as well', () => {
    const steel = { shackles: ['Bow shackle 3.25', 'Bow shackle 3.25'], slings: ['Round sling 1 m'] };
    const more = plan(
      demoTour((file) => {
        const [left] = file.tour.shows[0].hangs;
        left.secondary = steel;
        left.picks[0].bridle = {
          ...steel,
          legs: [
            { xMm: 0, yMm: -1500, aboveMm: 2500 },
            { xMm: 0, yMm: 1500, aboveMm: 2500 },
          ],
        };
      }),
    );
    const line = (key: string) => more.hardware.lines.find((each) => each.key === key);
    // Main left and Main right: two shackles and a sling of the secondary suspension, and as many for each of the two legs.
    expect(line('Bow shackle 3.25')).toMatchObject({ fitted: 24, loose: 24, difference: 0 });
    expect(line('Round sling 1 m')).toMatchObject({ fitted: 12, loose: 12, difference: 0 });
  });

  it('plans spare hoists by serial, in date like the rest, and counts none of them as fitted', () => {
    const withSpare = (hoists: number) =>
      plan(
        demoTour((file) => {
          file.tour.spares.push({ item: 'Chain hoist 2.5 t', lossPerUse: 0.001, level: 0.9 });
          const like = file.items.find((each: any) => each.id === 'H-01');
          for (let n = 0; n < hoists; n++) file.items.push({ ...like, id: `H-2${n}` });
        }),
      );
    const short = withSpare(0);
    expect(sentencesOf(short, 'hardware-missing')).toEqual([expect.stringContaining('hoist (Chain hoist 2.5 t): 1 missing')]);
    const enough = withSpare(1);
    expect(enough.hardware.lines.find((line) => line.item === 'hoist')).toMatchObject({ fitted: 6, spares: 1, missing: 0 });
    expect(enough.hardware.chosen.filter((each) => each.where === 'spare, hung nowhere')).toHaveLength(1);
    expect(enough.picks.hangs.flatMap((hang) => hang.picks)).toHaveLength(6);
  });

  it('reads the hardware of a plan that was kept before these figures were, and leaves a new one as it is', () => {
    expect(wholeHardware(demo.hardware)).toEqual(demo.hardware);
    const [line] = demo.hardware.lines;
    const { takenFrom: _taken, carriers: _carriers, pooling: _pooling, learned: _learned, staysInBox: _stays, ...kept } = line!;
    const { chosen, caution } = demo.hardware;
    const whole = wholeHardware({ lines: [kept], chosen, caution, trunkLevel: 0.91 });
    expect(whole).toMatchObject({
      chains: [],
      trunk: { wanted: null, level: 0.91 },
      lines: [{ fitted: 120, carriers: [], learned: null }],
    });
  });
});
