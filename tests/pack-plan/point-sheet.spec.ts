import { allSheets, markOutRows, pointRows, pointSheet, renderMarkup } from '#drawings';
import { type PackPlan, makePackPlan, structurePoints } from '#pack-plan';
import { loadIntegerProgramSolver } from '#runtime';
import { readTourFile } from '#tour-file';
import { demoTour, writtenDemoTour } from '../support/demo-tour.js';
import { plannedShow } from '../support/planned-show.js';

const plain = (markup: string): string =>
  markup
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')
    .replaceAll('\u202f', ' ')
    .trim();
const show = (file: any) => file.tour.shows[0];
const printed = (picks: PackPlan['picks']): string =>
  plain(renderMarkup(pointSheet({ plan: { picks, findings: [], show: { name: '', venue: '', from: '' } } as never, revision: null })));
const column = (picks: PackPlan['picks'], point: string, name: string) => {
  const [head, ...rows] = pointRows(picks);
  return rows.find((each) => each[0] === point)![head!.indexOf(name)];
};
const bridle = {
  legs: [
    { xMm: 0, yMm: -1000, aboveMm: 2000, structureBy: 'the mill', structure: { value: 30, unit: 'kN' } },
    { xMm: 0, yMm: 2000, aboveMm: 2000 },
  ],
  slings: ['Round sling 1 m', 'Round sling 1 m'],
  shackles: ['Bow shackle 3.25'],
};

describe('the sum on a truss', () => {
  const limited = (kN: number | undefined) =>
    plannedShow((_, file) => (show(file).beams[0].allowed = kN === undefined ? undefined : { value: kN, unit: 'kN' }));
  const { picks } = limited(100);
  const sumN = structurePoints(picks).reduce((sum, each) => sum + each.verticalDynamicN, 0);

  it('is that of the worst of its points, and stops a newton beyond what it may carry', () => {
    expect(picks.site!.beams[0]!.worstDynamicN).toBeCloseTo(sumN, 6);
    const stops = (kN: number) => limited(kN).stops.filter((each) => /Front truss/.test(each.sentence));
    expect(stops(sumN / 1000 + 0.001)).toEqual([]);
    const [stop] = stops(sumN / 1000 - 0.001);
    expect(stop!.sentence).toMatch(/Front truss with everything that hangs on it would carry/);
  });

  it('is said to have no figure where nobody gave one', () => {
    const beams = limited(undefined).findings.filter((each) => /Front truss/.test(each.sentence));
    expect(beams.map((each) => each.code)).toEqual(['no-rated-value']);
  });

  it('wants beams that are there, once each, their low steel below the high', () => {
    const faults = (change: (file: any) => void) => {
      const read = readTourFile(writtenDemoTour(change));
      return read.ok ? [] : read.error.map((each) => each.field);
    };
    expect(faults((file) => (show(file).hangs[0].picks[1].beam = 'Back truss'))).toEqual(['tour.shows[0].hangs[0].picks[1].beam']);
    expect(faults((file) => (show(file).beams[0].lowSteelMm = 16_001))).toEqual(['tour.shows[0].beams[0].lowSteelMm']);
    expect(faults((file) => show(file).beams.push(show(file).beams[0]))).toEqual(['tour.shows[0].beams[1].name']);
  });
});

describe('the sheet for the rigger of the house', () => {
  it('has the same figures as its CSV: hoist, class, body, chain, what the chain carries, steel, by whom', () => {
    const { picks } = plannedShow();
    const sheet = printed(picks);
    const pick = picks.hangs[0]!.picks[0]!;
    expect(column(picks, 'Main left C', 'hoist_class')).toBe('D8 Plus');
    expect(column(picks, 'Main left C', 'hoist_body')).toBe('at the grid');
    expect(column(picks, 'Main left C', 'allowed_by')).toBe('rigger of Quayside Hall');
    expect(column(picks, 'Main left C', 'shackles')).toBe('2 × Bow shackle 3.25');
    expect([column(picks, 'Main left C', 'high_steel_mm'), column(picks, 'Main left C', 'low_steel_mm')]).toEqual([16_000, 15_200]);
    // The body climbs: its chain carries hook load, hoist and chain; the point adds nothing.
    const chain = Number(column(picks, 'Main left C', 'chain_carries_worst_kg'));
    expect(chain).toBeCloseTo(pick.worst!.pointLoadN / 9.80665, 1);
    for (const words of [
      'D8 Plus, 2 500 kg at the grid own 16.00 m / 15.20 m',
      '15.20 m / 24.00 m',
      `/ ${Math.round(chain).toLocaleString('en').replace(',', ' ')} kg`,
      '2 × Bow shackle 3.25; 1 × Round sling 1 m',
      'Persons below the load: yes. Moved over persons: no. Use case, compared with: hold over people (by the persons below). Indoors: no wind.',
      'middle of the stage edge, nail in the boards',
    ])
      expect(sheet).toContain(words);
    const atPoint = plannedShow((hangs) => (hangs[0].picks[0].hoistBody = 'at the point')).picks;
    expect(Number(column(atPoint, 'Main left C', 'chain_carries_worst_kg'))).toBeCloseTo(chain - 64, 1);
  });

  it('gives every leg its length, its apex, its forces and steel, and the legs together straight down', () => {
    const { picks } = plannedShow((hangs) => (hangs[0].picks[0].bridle = bridle));
    const sheet = printed(picks);
    expect(column(picks, 'Main left C, leg 1', 'leg_length_mm')).toBeCloseTo(Math.hypot(1000, 2000), 1);
    expect(column(picks, 'Main left C, leg 2', 'leg_from_horizontal_deg')).toBe(45);
    expect(column(picks, 'Main left C, leg 1', 'apex_height_mm')).toBe('13200');
    expect(column(picks, 'Main left C, leg 1', 'allowed_by')).toBe('the mill');
    expect(column(picks, 'Main left C, leg 2', 'allowed_by')).toBe('rigger of Quayside Hall');
    expect(column(picks, 'Main left C, leg 1', 'slings')).toBe('2 × Round sling 1 m');
    expect(sheet).toContain('13.20 m / 15.20 m');
    const worst = `${(picks.hangs[0]!.picks[0]!.worst!.pointLoadN / 1000).toFixed(2)} kN`;
    expect(sheet).toMatch(new RegExp(`hole C: the legs together [\\d.]+ kN / ${worst} 0.00 kN ${worst}`));
  });

  it('says of wind what is done beyond the limit, or that nobody has said', () => {
    const out = (windAction?: string) =>
      printed(
        plannedShow((_, file) => Object.assign(show(file), { outdoor: true, ...(windAction === undefined ? {} : { windAction }) })).picks,
      );
    expect(out()).toContain('Outdoors. In service up to 12 m/s (rigging system); beyond: what is done then is not on file.');
    expect(out('lowered to the deck within ten minutes')).toContain('beyond: lowered to the deck within ten minutes.');
  });
});

describe('kit of others', () => {
  it('is neither booked nor counted, no serial of it is missed, and its loads are the same', async () => {
    const integerProgram = await loadIntegerProgramSolver();
    const plan = (kitBy?: string) => {
      const file = demoTour((written) => {
        for (const pick of show(written).hangs[2].picks) if (kitBy !== undefined) pick.kitBy = kitBy;
      });
      return makePackPlan(file, 'quayside', { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
    };
    const [ours, theirs] = [plan(), plan('venue')];
    const centre = (of: typeof ours) => of.picks.hangs[2]!.picks;
    const serials = centre(ours).map((each) => each.hoistSerial);
    expect(serials).toEqual(['H-06', 'H-07']);
    expect(centre(theirs).map((each) => [each.hoistSerial, each.kit!.by])).toEqual(Array(2).fill([null, 'venue']));
    expect(centre(theirs).map((each) => each.pointLoadN)).toEqual(centre(ours).map((each) => each.pointLoadN));
    const booked = (of: typeof ours) => of.uses.filter((each) => /^H-\d/.test(each.item)).length;
    expect([booked(ours), booked(theirs)]).toEqual([6, 4]);
    const fitted = (of: typeof ours, model: string) => of.hardware.lines.find((each) => each.model === model)!.fitted;
    for (const [model, less] of [
      ['Chain hoist 2.5 t', 2],
      ['Bow shackle 3.25', 4],
      ['Round sling 1 m', 2],
    ] as const)
      expect(fitted(ours, model) - fitted(theirs, model)).toBe(less);
    for (const code of ['item-missing', 'checker-disagrees']) expect(theirs.findings.filter((each) => each.code === code)).toEqual([]);
    expect(printed(theirs.picks)).toMatch(/Centre, hole C Front truss theirs Chain hoist 2.5 t D8 Plus, 2 500 kg at the grid venue/);
  });
});

describe('the mark-out', () => {
  it('goes outward from the datum, and checks every mark against the two nearest laid before', () => {
    const { rows, unplaced } = markOutRows(plannedShow().picks);
    expect(unplaced).toEqual([]);
    expect(rows.map((each) => each.mark)).toEqual(['Centre C', 'Centre L', 'Main left N', 'Main right N', 'Main left C', 'Main right C']);
    // Places by hand: tests/reference/demo-points-by-hand.md.
    const left = rows[4]!;
    expect(left.diagonalMm).toBeCloseTo(Math.hypot(1213.4, 8400.9), 0);
    expect(left.checks[0]!.mark).toBe('Main left N');
    expect(left.checks[0]!.mm).toBeCloseTo(Math.hypot(1213.4 - 465.5, 8400.9 - 8348.6), 0);
    expect(left.tape).toBe('Main left C · 15.20 m up');
  });

  it('tells the hook of a bridle from its feet, and names what has no place', () => {
    const { rows } = markOutRows(plannedShow((hangs) => (hangs[2].picks[0].bridle = bridle)).picks);
    const own = rows.filter((each) => each.mark.startsWith('Centre C')).map((each) => [each.mark, each.what, each.tape]);
    expect(own).toContainEqual(['Centre C, hook', 'hook', 'Centre C · HOOK, not a foot']);
    expect(own).toContainEqual(['Centre C, leg 1', 'foot', 'Centre C, leg 1 · FOOT · 15.20 m up']);
    expect(own).toHaveLength(3);
    const nowhere = markOutRows(plannedShow((hangs) => delete hangs[2].stage).picks);
    expect(nowhere.unplaced).toEqual(['Centre C', 'Centre L']);
  });
});

describe('on every sheet of a plan', () => {
  let whole: (approved: boolean) => readonly string[];
  let wanting: readonly string[];
  beforeAll(async () => {
    const integerProgram = await loadIntegerProgramSolver();
    whole = (approved) => {
      const file = demoTour((written) => {
        if (approved) return;
        delete written.systems[0].approved;
        written.loadRules[0].usableShareWithPersonsBelow = 0.6;
        written.loadRules[0].workingCoefficients.elements[4].personsBelow = 8;
      });
      const plan = makePackPlan(file, 'quayside', { now: () => 0, integerProgram, timeLimitSeconds: 1e6 });
      return allSheets({ plan, revision: null }, 'metric', () => null).map((each) => plain(renderMarkup(each)));
    };
    wanting = whole(false);
  });

  it('a rigging system that nobody approved is marked', () => {
    const marked = (all: readonly string[]) =>
      all.filter((each) => /EXAMPLE, NOT FOR USE: the data of the rigging system Saltmarsh rig/.test(each));
    expect(wanting.length).toBeGreaterThan(25);
    expect(marked(wanting)).toHaveLength(wanting.length);
    expect(marked(whole(true))).toEqual([]);
  });

  it('that shows a figure which is compared, a load rule less strict than published says so, by which edition and content', () => {
    const compared = wanting.filter((each) => each.includes('Loads are computed from the figures on file'));
    expect(compared.length).toBeGreaterThan(10);
    for (const each of compared) {
      expect(each).toContain(
        'leaves 0.6 of a rated load with persons below, where at most 0.5 is published (DGUV Information 215-313 sec. 2.1)',
      );
      expect(each).toMatch(/leaves 0.625 of the rated load of shackle with persons below/);
    }
    expect(
      wanting.filter((each) => /House rule[^.]*\.25 on every point load[^.]*, edition 3, content [0-9a-f]{8}/.test(each)).length,
    ).toBeGreaterThan(8);
  });
});
