import { readTourFile } from '#tour-file';
import { writtenDemoTour } from '../../../tests/support/demo-tour.js';
import { plannedShow } from '../../../tests/support/planned-show.js';
import { type HangResult, type PicksResult, judgeReading } from '#pack-plan';
import { againstTick } from './running-order.js';

type Change = (hang: any, show: any, file: any) => void;
const onFirstShow = (change: Change) => (file: any) => change(file.tour.shows[0].hangs[0], file.tour.shows[0], file);
const fileWith = (change: Change): unknown => writtenDemoTour(onFirstShow(change));

/** Loads of the first show with its left hang changed, on carts that are not chosen yet. */
function picksOf(change: Change = () => undefined) {
  const { picks, findings } = plannedShow((_, file) => onFirstShow(change)(file));
  return { picks, main: picks.hangs[0]!, codes: (code: string) => findings.filter((each) => each.code === code) };
}

describe('the loads of a hang', () => {
  it('are the sum of the masses that the page of a pick lists', () => {
    const { main } = picksOf();
    const massKg = main.masses.reduce((sum, each) => sum + each.massKg, 0);
    expect(massKg).toBeCloseTo(main.massKg, 9);
    expect(main.masses.reduce((sum, each) => sum + each.massKg * each.xMm, 0) / massKg).toBeCloseTo(main.centreOfGravity.xMm, 7);
    expect(main.masses.reduce((sum, each) => sum + each.massKg * each.zMm, 0) / massKg).toBeCloseTo(main.centreOfGravity.zMm, 7);
    const [front, rear] = main.picks;
    expect((front!.reactionN + rear!.reactionN) / 9.80665).toBeCloseTo(massKg, 7);
    expect(front!.working.steps!.join(' ')).toContain(`= ${front!.reactionN.toFixed(1).replace(/\B(?=(\d{3})+(?!\d))/g, '\u202f')} N`);
    expect(front!.alone).toMatchObject({ tiltDownDeg: main.slackAtDeg!.rearSlack, hookLoadKg: main.massKg + front!.belowHookKg });
  });

  it('keep the reserve of the regime over the tilts that the aim needs, or say so', () => {
    expect(picksOf().main.tiltRange).toMatchObject({ reserveShare: 0.1, verdict: 'within' });
    const wide = picksOf((hang) => (hang.tiltNeeds = { fromDeg: -5, toDeg: 4 }));
    expect(wide.main.tiltRange!.verdict).toBe('outside');
    expect(wide.codes('outside-tilt-range')[0]).toMatchObject({ weight: 'stop', sentence: expect.stringContaining('10 % of the weight') });
  });

  it('are judged at every stage: with the worst moment named, and a chain that would have to push while lifting', () => {
    const { main } = picksOf();
    // Five loads swing when their link is drawn coming down: the joint to the grid opens on the ground.
    expect(main.stages).toHaveLength(35 + 5);
    expect(main.stages.slice(-5).map((each) => each.name)).toEqual(
      ['21-24', '17-20', '13-16', '9-12', '5-8'].map((load) => `Main left ${load}, coming down, rear link drawn`),
    );
    expect(main.envelope!.picks[0]!.mostAt).toMatch(/^Main left \d+-\d+, swung back$/);
    const rearward = picksOf((hang) => (hang.liftTiltDownDeg = -30));
    expect(rearward.codes('cannot-lift-like-this')[0]).toMatchObject({
      weight: 'stop',
      sentence: expect.stringMatching(/would have to push with [\d\u202f]+ N/),
    });
  });

  it('with a pull-back: chains incline, the steel of the line and the side load of the shackles are compared', () => {
    const pull = {
      position: 24,
      behindMm: 500,
      belowMm: 300,
      anchorForwardMm: -6000,
      anchorBelowMm: 11000,
      tensionN: 900,
      slings: ['Round sling 1 m'],
    };
    const { main, picks } = picksOf((hang) => (hang.pullBack = { ...pull, chainMm: 4000 }));
    const { figures, comparisons } = main.pullBack!;
    expect(figures!.tensionN).toBe(900);
    expect(Math.hypot(figures!.anchorForwardN, figures!.anchorUpN)).toBeCloseTo(900, 9);
    expect(figures!.drawnAsideMm).toBeLessThan(0);
    expect(comparisons[0]!.sentence).toMatch(/sling Round sling 1 m of the pull-back: 92 kg of 1\u202f500 kg/);
    const level = { ...pull, position: 12, anchorForwardMm: -9000, anchorBelowMm: 5000, tensionN: 2500 };
    const hard = picksOf((hang) => (hang.pullBack = { ...level, chainMm: 4000 })).main;
    expect(hard.picks[0]!.worst).toMatchObject({ at: 'at trim, the pull-back taken up', reactionN: hard.picks[0]!.reactionN });
    const shackle = hard.picks[0]!.comparisons.find((each) => each.what.startsWith('shackle'))!;
    expect(shackle.factors.map((each) => each.what)).toContainEqual(expect.stringMatching(/^side load at/));
    expect(shackle.fact!.worstAt!.stage).toEqual({ code: 'line-taken-up' });
    expect(main.slackAtDeg).toBeNull();
    // The mirror has it too; the centre has not.
    expect(picks.hangs.map((each) => each.pullBack !== null)).toEqual([true, true, false]);
    const gone = picksOf((hang) => (hang.pullBack = { ...pull, anchorForwardMm: 0, anchorBelowMm: -9000, tensionN: 99000 }));
    expect(gone.codes('cannot-hang-like-this')[0]!.sentence).toMatch(/lifts the hang/);
  });

  it('on a bridle: its legs carry the point load, flat legs are refused, the mirror has them on the other side', () => {
    const bridle = (aboveMm: number) => ({
      legs: [
        { xMm: 0, yMm: -1000, aboveMm },
        { xMm: 0, yMm: 2000, aboveMm },
      ],
      slings: ['Round sling 1 m'],
    });
    const { main, picks } = picksOf((hang) => (hang.picks[0].bridle = bridle(2000)));
    const { legs } = main.picks[0]!.bridle!;
    expect(legs.reduce((sum, leg) => sum + leg.verticalN, 0)).toBeCloseTo(main.picks[0]!.pointLoadN, 6);
    expect(legs[0]!.horizontalN).toBeCloseTo(legs[1]!.horizontalN, 6);
    // Twice as near: twice the vertical share.
    expect(legs[0]!.verticalN).toBeCloseTo(2 * legs[1]!.verticalN, 6);
    expect(legs.map((leg) => leg.directionDeg)).toEqual([90, -90]);
    expect(picks.hangs[1]!.picks[0]!.bridle!.legs.map((leg) => leg.directionDeg)).toEqual([-90, 90]);
    const flat = picksOf((hang) => (hang.picks[0].bridle = bridle(900)));
    expect(flat.codes('over-rated-load').map((each) => each.sentence)).toContainEqual(
      expect.stringMatching(/flattest leg stands at 24\.2°/),
    );
    expect(
      picksOf(
        (hang) =>
          (hang.picks[0].bridle = {
            legs: [
              { xMm: 0, yMm: 1000, aboveMm: 2000 },
              { xMm: 0, yMm: 2000, aboveMm: 2000 },
            ],
          }),
      ).codes('cannot-hang-like-this'),
    ).not.toEqual([]);
  });

  it('on more than two points in a line states no shares but the total, and says: measure', () => {
    const { main, codes, picks } = picksOf((hang) => hang.picks.push({ ...hang.picks[0], hole: 'G' }));
    expect(main.picks).toEqual([]);
    expect(main.unshared).toMatchObject({ totalN: expect.closeTo(main.massKg * 9.80665, 6) });
    expect(codes('measure')[0]!.sentence).toMatch(/3 points in one line.*measure every point/);
    expect(judgeReading(main, 'G', 'at the hook', 500, picks.loadRule).verdict).toBe('not judged');
  });

  it('take a frame between boxes that do not link by themselves', () => {
    const frame = {
      id: 'Frame 7',
      joins: ['Plover', 'Dunlin'],
      massKg: 30,
      frontHeightMm: 120,
      rearHeightMm: 100,
      depthMm: 500,
      cgBehindMm: 250,
      cgBelowMm: 60,
      rearLeverMm: 505,
    };
    const without = picksOf();
    const { main, codes } = picksOf((_hang, _show, file) => (file.systems[0].adapters = [frame]));
    expect(main.massKg).toBeCloseTo(without.main.massKg + 30, 9);
    expect(main.joints.map((joint) => joint.adapter).filter(Boolean)).toEqual(['Frame 7']);
    expect(main.joints).toHaveLength(25);
    expect(main.boxes).toHaveLength(24);
    expect(main.outline.boxes.map((box) => box.position)).toEqual(Array.from({ length: 24 }, (_, index) => index + 1));
    expect(codes('no-rated-value').some((each) => each.sentence.includes('joints of box'))).toBe(true);
  });

  it('name a class of hoist that may not hold over people without a secondary suspension, and are content with one', () => {
    const classed = (hoistClass: string | undefined) => (_hang: any, _show: any, file: any) =>
      (file.catalogue.hoists[0].hoistClass = hoistClass);
    expect(picksOf(classed('D8')).codes('over-rated-load')[0]!.sentence).toMatch(
      /asks for a secondary suspension over people, and the hang has none/,
    );
    expect(picksOf(classed(undefined)).codes('no-rule')[0]!.sentence).toMatch(/no class on file/);
    const second = picksOf((hang, _show, file) => {
      file.catalogue.hoists[0].hoistClass = 'D8';
      hang.secondary = { shackles: ['Bow shackle 3.25'], slings: [] };
    });
    // Half of 3.25 t holds 1,625 kg; the hang weighs 1,681 kg.
    expect(second.main.secondary[0]).toMatchObject({ limit: 1625, verdict: 'over' });
    expect(second.main.runningOrder.goingUp.some((step) => step.hold && /secondary suspension/.test(step.text))).toBe(true);
    // With people below while it moves the worst of lifting is held against the reduced hoist as well.
    const moved = picksOf((_hang, show) => (show.movesOverPersons = true))
      .codes('over-rated-load')
      .map((each) => each.sentence);
    expect(moved).toContainEqual(expect.stringMatching(/hoist Chain hoist 2\.5 t would carry 1\u202f417 kg, more than 1\u202f250 kg/));
    expect(moved).toContainEqual(expect.stringMatching(/loads are not moved over people with this class/));
  });

  it('say which rules were written down from memory, and which are missing', () => {
    const { codes } = picksOf((_hang, _show, file) => (file.loadRules[0].sideLoad.status = 'from memory'));
    expect(codes('rule-from-memory')[0]!.sentence).toMatch(/side load of shackles/);
    const none = picksOf((_hang, _show, file) => delete file.loadRules[0].hoistClasses);
    expect(none.codes('no-rule')[0]!.sentence).toMatch(/no rule on classes of hoists over people/);
    expect(
      picksOf((hang) => delete hang.picks[0].structure)
        .codes('no-rated-value')
        .map((each) => each.sentence),
    ).toContainEqual(expect.stringMatching(/What the structure may carry is not on file for .*Main left C/));
  });

  it('stop where a model of the hang, a pin of its boxes or the regime waits for the safety officer, and choose no such steel', () => {
    const waits = (change: Change) =>
      picksOf(change)
        .codes('model-not-accepted')
        .map((each) => [each.weight, each.sentence]);
    expect(waits(() => undefined)).toEqual([]);
    const shackle = picksOf((_hang, _show, file) => (file.catalogue.shackles[0].unaccepted = true));
    expect(shackle.codes('model-not-accepted')).toEqual([
      expect.objectContaining({ weight: 'stop', sentence: expect.stringMatching(/^Bow shackle 3\.25 waits for the safety officer/) }),
    ]);
    expect(shackle.main.picks.map((pick) => pick.enough!.shackle)).toEqual([null, null]);
    for (const kind of ['boxes', 'grids', 'hoists', 'pins'] as const)
      expect(waits((_hang, _show, file) => (file.catalogue[kind][0].unaccepted = true))).toEqual([['stop', expect.any(String)]]);
    // On file and in no hang: nothing to stop.
    expect(
      waits((_hang, _show, file) => file.catalogue.shackles.push({ ...file.catalogue.shackles[0], model: 'Other', unaccepted: true })),
    ).toEqual([]);
    expect(picksOf((_hang, _show, file) => (file.loadRules[0].unaccepted = true)).codes('rule-not-accepted')).toEqual([
      expect.objectContaining({ weight: 'stop' }),
    ]);
  });

  it('choose the smallest steel on file that is enough', () => {
    const { main, picks } = picksOf((_hang, _show, file) =>
      file.catalogue.shackles.push(
        { model: 'Bow shackle 1', size: '1 t', massKg: 0.3, ratedLoad: { value: 1, unit: 't' } },
        { model: 'Bow shackle 2.5 US', size: '2.5 short ton', massKg: 0.5, ratedLoad: { value: 2.5, unit: 'short ton' } },
      ),
    );
    // While lifting 1,417 kg in front and 1,348 kg behind: half of 2.5 short ton is 1,134 kg and is not enough, half of 3.25 t is.
    expect(main.picks.map((pick) => pick.enough!.shackle)).toEqual(['Bow shackle 3.25', 'Bow shackle 3.25']);
    // The centre carries 866 kg in front and 690 kg behind: half of 2.5 short ton is.
    expect(picks.hangs[2]!.picks.map((pick) => pick.enough!.shackle)).toEqual(['Bow shackle 2.5 US', 'Bow shackle 2.5 US']);
  });

  it('judge a load cell by the tolerance of the regime', () => {
    const { main, picks } = picksOf();
    const at = (kg: number, rule: Pick<PicksResult['loadRule'], 'readingTolerance' | 'dynamicFactor'> = picks.loadRule) =>
      judgeReading(main, 'C', 'at the hook', kg, rule);
    expect(at(470).verdict).toBe('agrees');
    expect(at(600)).toMatchObject({ verdict: 'differs', sentence: expect.stringMatching(/30\.8 % more.*Stop; find out why/) });
    // Within the tolerance of what was computed and still too much for the hoist.
    expect(judgeReading(main, 'N', 'at the hook', 1300, picks.loadRule)).toMatchObject({
      verdict: 'differs',
      sentence: expect.stringMatching(/more than is allowed of hoist .*1\u202f250 kg/),
    });
    expect(at(470, { readingTolerance: null, dynamicFactor: 1 }).sentence).toMatch(/states no tolerance/);
  });

  it.each([
    [
      'a pull-back on a box that is not there',
      (hang: any) => (hang.pullBack = { position: 30, behindMm: 0, belowMm: 0, anchorForwardMm: -1, anchorBelowMm: 1, tensionN: 5 }),
      'pullBack.position',
    ],
    [
      'a pull-back without tension on two picks',
      (hang: any) => (hang.pullBack = { position: 3, behindMm: 0, belowMm: 0, anchorForwardMm: -1, anchorBelowMm: 1 }),
      'pullBack.tensionN',
    ],
    ['three picks in two holes', (hang: any) => hang.picks.push({ ...hang.picks[0] }), 'picks[2].hole'],
    [
      'an unknown shackle on a bridle',
      (hang: any) =>
        (hang.picks[0].bridle = {
          legs: [
            { xMm: 0, yMm: 1, aboveMm: 1 },
            { xMm: 0, yMm: -1, aboveMm: 1 },
          ],
          shackles: ['Unheard'],
        }),
      'bridle.shackles[0]',
    ],
    ['a rated load in an unknown unit', (hang: any) => (hang.picks[0].structure = { value: 3, unit: 'stone' }), 'structure.unit'],
    ['tilts the wrong way round', (hang: any) => (hang.tiltNeeds = { fromDeg: 3, toDeg: 1 }), 'tiltNeeds.toDeg'],
  ])('refuse %s', (_what, change, field) => {
    const read = readTourFile(fileWith(change));
    expect(read.ok ? [] : read.error.map((each) => each.field).filter((each) => each.endsWith(field))).not.toEqual([]);
  });
});

describe('the lift sequence', () => {
  const steps = (): HangResult['runningOrder']['goingUp'] => picksOf().main.runningOrder.goingUp;

  it('repeats the steps of a cart for each cart load and waits at every hold', () => {
    const all = steps();
    expect(all.filter((each) => /Roll (it|the cart) under/.test(each.text)).map((each) => each.load?.id)).toEqual([
      'Main left 1-4',
      'Main left 5-8',
      'Main left 9-12',
      'Main left 13-16',
      'Main left 17-20',
      'Main left 21-24',
    ]);
    const [first, second] = all.filter((each) => each.hold);
    expect(againstTick(all, new Set(), first!.key, true)).toBeNull();
    expect(againstTick(all, new Set(), second!.key, true)).toEqual({ code: 'hold-open', step: first!.text });
    expect(againstTick(all, new Set([first!.key]), second!.key, true)).toBeNull();
    expect(againstTick(all, new Set([first!.key, second!.key]), first!.key, false)).toEqual({ code: 'later-ticked' });
  });

  it('is ticked at its holds alone; a tick that stands at another step from before holds nothing up and is taken back', () => {
    const all = steps();
    const holds = new Set(all.filter((each) => each.hold).map((each) => each.key));
    const read = all.filter((each) => !each.hold);
    expect(read).toHaveLength(8);
    for (const each of read) expect(againstTick(all, holds, each.key, true)).toEqual({ code: 'only-read', step: each.text });
    const before = new Set(read.map((each) => each.key));
    const [first] = holds;
    expect(againstTick(all, new Set([first!, ...before]), first!, false)).toBeNull();
    for (const key of before) expect(againstTick(all, before, key, false)).toBeNull();
  });

  it('comes down in the reverse order of the cart loads', () => {
    const { comingDown } = picksOf().main.runningOrder;
    expect([...new Set(comingDown.flatMap((each) => each.load?.id ?? []))][0]).toBe('Main left 21-24');
  });
});
