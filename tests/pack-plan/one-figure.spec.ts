import { drawStage, hangSheet, pickContent, pointRows, pointTable, renderMarkup, scenePoints, stageContent } from '#drawings';
import { groupDigits } from '#kernel';
import { type PicksResult, liftMoments, structurePoints } from '#pack-plan';
import { plannedShow } from '../support/planned-show.js';

const plain = (markup: string): string =>
  markup
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
/** Every row of every table of a markup, cell by cell. */
const rowsOf = (markup: string): readonly (readonly string[])[] =>
  [...markup.matchAll(/<tr>(.*?)<\/tr>/gs)].map((row) => [...row[1]!.matchAll(/<td[^>]*>(.*?)<\/td>/gs)].map((cell) => plain(cell[1]!)));
const headOf = (markup: string): readonly string[] => [...markup.matchAll(/<th[^>]*>(.*?)<\/th>/gs)].map((cell) => plain(cell[1]!));

/** As a sheet writes newtons: kilonewtons with two decimals. */
const kilonewtons = (newtons: number): string => `${(newtons / 1000).toFixed(2).replace('-', '\u2212')} kN`;

const bridle = {
  legs: [
    { xMm: 0, yMm: -1000, aboveMm: 2000 },
    { xMm: 0, yMm: 2000, aboveMm: 2000 },
  ],
  slings: ['Round sling 1 m'],
  shackles: ['Bow shackle 3.25'],
};
const pullBack = {
  position: 12,
  behindMm: 500,
  belowMm: 300,
  anchorForwardMm: -6000,
  anchorBelowMm: 10_500,
  tensionN: 900,
  slings: ['Round sling 1 m'],
};

const shows: Record<string, (hangs: any[]) => void> = {
  'the demo': () => undefined,
  'a point that two hangs share': (hangs) => {
    hangs[2].stage = { ...hangs[0].stage, azimuthDeg: 0 };
    for (const hang of [hangs[0], hangs[2]]) hang.picks[0].point = 'Beam 4';
  },
  'a bridle and a pull-back': (hangs) => {
    hangs[0].picks[0].bridle = bridle;
    Object.assign(hangs[2], { pullBack });
  },
};

describe.each(Object.entries(shows))('the loads of %s', (_, change) => {
  const { picks } = plannedShow(change);
  const points = structurePoints(picks);
  const [head, ...rows] = pointRows(picks);
  const csv = (point: string, column: string) => rows.find((each) => each[0] === point)![head!.indexOf(column)];

  it('are one figure a point in the CSV, on the point sheet, on the stage plan and in the scene', () => {
    const table = renderMarkup(pointTable(picks, 'metric'));
    const printed = rowsOf(table).slice(1);
    const heads = headOf(table);
    const plan = renderMarkup(drawStage(picks)!);
    const scene = scenePoints(picks, 'plan');
    expect(printed).toHaveLength(points.length);
    expect(rows).toHaveLength(points.length);
    points.forEach((point, index) => {
      const cell = (name: string) => printed[index]![heads.indexOf(name)];
      const [rest, worst, dynamic] = ['rest_n', 'worst_n', 'dynamic_n'].map((column) => csv(point.point, column) as number) as [
        number,
        number,
        number,
      ];
      expect(point.restN).toBeCloseTo(rest, 1);
      expect(point.verticalN).toBeCloseTo(worst, 1);
      expect(dynamic).toBeCloseTo(worst * 1.25, 0);
      expect(printed[index]![0]).toContain(point.point);
      expect([cell('At rest'), cell('Worst'), cell('× 1.25')]).toEqual([rest, worst, dynamic].map(kilonewtons));
      expect(cell('Worst at')).toBe(csv(point.point, 'worst_at'));
      const aside = [csv(point.point, 'horizontal_n'), csv(point.point, 'horizontal_dynamic_n')] as [number, number];
      if (point.directionDeg === null) expect(aside).toEqual([0, 0]);
      else expect(cell('Aside, × 1.25')).toContain(`${kilonewtons(aside[0])}, ${kilonewtons(aside[1])} toward`);
      expect(plan).toContain(`${point.point} · ${kilonewtons(dynamic)}`);
      const support = scene.split('<Support').find((each) => each.includes(`name="${point.point}"`))!;
      const written = support
        .match(/at rest (-?\d+) N, worst (-?\d+) N, with factor (-?\d+) N/)!
        .slice(1)
        .map(Number);
      // Whole newtons there, tenths in the CSV.
      [rest, worst, dynamic].forEach((each, at) => expect(Math.abs(written[at]! - each)).toBeLessThanOrEqual(0.55));
      expect(support).toContain(`${point.xMm},${point.yMm},${point.heightMm}}`);
    });
  });

  it('are the same on the hang sheet, on the page of a pick and in what was compared', () => {
    for (const hang of picks.hangs)
      for (const pick of hang.picks) {
        const own = points.filter((each) => each.point === pick.point || each.point.startsWith(`${pick.point}, leg`));
        const sum = (of: (point: (typeof own)[number]) => number) => own.reduce((total, each) => total + of(each), 0);
        const structure = pick.comparisons.find((each) => each.fact?.part.code === 'structure')!;
        expect(structure.value * 9.80665).toBeCloseTo(
          sum((each) => each.verticalDynamicN),
          6,
        );
        const page = rowsOf(pickContent(picks.loadRule, hang, pick, 'metric').map(renderMarkup).join(''));
        const compared = page.find((row) => row[0]?.startsWith('structure above'))!;
        expect(compared[1]).toBe(kilonewtons(sum((each) => each.verticalDynamicN)));
        // The sum of the page ends with the point at rest, with its line where it has one.
        const steps = plain(pickContent(picks.loadRule, hang, pick, 'metric').map(renderMarkup).join(' '));
        expect(steps).toContain(plain(`= ${groupDigits(pick.pointLoadN, 1)} N.`));
        expect(steps).toContain(plain(`= ${groupDigits(pick.pointLoadN * 1.25, 1)} N.`));
        if (own.some((each) => each.hangs.length > 1)) continue;
        const row = hangRow(picks, hang.hang, pick.hole);
        expect(row.slice(4, 7)).toEqual(
          [sum((each) => each.restN), sum((each) => each.verticalN), sum((each) => each.verticalDynamicN)].map(kilonewtons),
        );
        expect(row[7]).toBe(own[0]!.worstAt.join('; '));
      }
  });

  it('are the same on the sheet of stages, in the envelope, in the moments that are drawn and in what the worst stands at', () => {
    for (const hang of picks.hangs) {
      const sheet = rowsOf(stageContent(hang, 'metric').map(renderMarkup).join(''));
      const moments = liftMoments(hang);
      expect(moments.map((each) => each.name)).toEqual(hang.stages.map((each) => each.name));
      hang.stages.forEach((stage, index) => {
        const row = sheet.find((each) => each[0] === stage.name)!;
        stage.picks.forEach(({ hole, reactionN }, at) => {
          expect(row[3 + at]).toBe(kilonewtons(reactionN));
          expect(moments[index]!.picks.find((each) => each.hole === hole)!.alongN).toBeCloseTo(reactionN, 6);
        });
        expect(moments[index]!.massKg).toBeCloseTo(stage.massKg, 6);
        expect(row[2]).toBe(plain(`${groupDigits(stage.massKg, 0)} kg`));
      });
      hang.envelope!.picks.forEach(({ hole, mostN, mostAt }) => {
        const most = Math.max(...hang.stages.map((stage) => stage.picks.find((each) => each.hole === hole)!.reactionN));
        expect(mostN).toBe(most);
        expect(hang.stages.find((each) => each.name === mostAt)!.picks.find((each) => each.hole === hole)!.reactionN).toBe(most);
        expect(hang.picks.find((each) => each.hole === hole)!.worst!.reactionN).toBeCloseTo(most, 6);
      });
    }
  });

  it('pull aside alike in the CSV, on the point sheet and in the scene, and add up on each beam', () => {
    const scene = scenePoints(picks, 'plan');
    for (const point of points) {
      const support = scene.split('<Support').find((each) => each.includes(`name="${point.point}"`))!;
      const [still, factored] = /aside (\d+) N, with factor (\d+) N/.exec(support)!.slice(1).map(Number) as [number, number];
      expect(Math.abs(still - (csv(point.point, 'horizontal_n') as number))).toBeLessThanOrEqual(0.55);
      expect(Math.abs(factored - (csv(point.point, 'horizontal_dynamic_n') as number))).toBeLessThanOrEqual(0.55);
      expect(support.includes(' toward ')).toBe(point.directionDeg !== null);
    }
    for (const beam of picks.site!.beams) {
      const on = points.filter((each) => beam.points.includes(each.point));
      expect(on.length).toBe(beam.points.length);
      expect(beam.worstDynamicN).toBeCloseTo(
        on.reduce((sum, each) => sum + each.verticalDynamicN, 0),
        6,
      );
    }
  });
});

/** The row of a pick on the sheet of its hang. */
function hangRow(picks: PicksResult, id: string, hole: string): readonly string[] {
  const plan = { picks, findings: [], show: { name: '', venue: '', from: '' } } as never;
  const hang = picks.hangs.find((each) => each.hang === id)!;
  return rowsOf(renderMarkup(hangSheet({ plan, revision: null }, hang))).find((row) => row[0]?.startsWith(`hole ${hole} `))!;
}

describe('a bridle', () => {
  it('gives each leg its own share of load, hoist, chain and steel: 2 to 1 where one anchor is twice as far', () => {
    // D. L. Hall, Rigging Math Made Simple, lesson 4: T1 = W L1 H2 / (V1 H2 + V2 H1); with V1 = V2 its vertical part is W H2 / (H1 + H2).
    const { picks } = plannedShow(shows['a bridle and a pull-back']);
    const [near, far] = structurePoints(picks).filter((each) => each.point.startsWith('Main left C, leg'));
    const pick = picks.hangs[0]!.picks[0]!;
    // A shackle of 0.62 kg and a sling of 0.9 kg for each of two legs.
    const addedKg = pick.hoistKg + pick.chainKg + pick.belowHookKg + 2 * (0.62 + 0.9);
    for (const [leg, share] of [
      [near!, 2 / 3],
      [far!, 1 / 3],
    ] as const) {
      expect(leg.addedKg).toBeCloseTo(addedKg * share, 9);
      expect(leg.restN).toBeCloseTo(pick.pointLoadN * share, 6);
      expect(leg.verticalN).toBeCloseTo(pick.worst!.pointLoadN * share, 6);
      // Both anchors stand 2 m above the hook.
      expect(leg.heightMm).toBeCloseTo(15_200, 6);
    }
    expect(near!.horizontalN).toBeCloseTo(pick.worst!.pointLoadN / 3, 6);
    expect(near!.horizontalDynamicN).toBeCloseTo((1.25 * pick.worst!.pointLoadN) / 3, 6);
    expect(pick.pointLoadN).toBeCloseTo(pick.reactionN + addedKg * 9.80665, 6);
  });

  it('is held leg by leg against what is allowed at each anchor', () => {
    const limited = (kN: number) =>
      plannedShow((hangs) => {
        hangs[0].picks[0].bridle = {
          ...bridle,
          legs: bridle.legs.map((leg, index) => (index === 0 ? { ...leg, structure: { value: kN, unit: 'kN' } } : leg)),
        };
      });
    const { picks } = limited(100);
    const [near, far] = structurePoints(picks).filter((each) => each.point.startsWith('Main left C, leg'));
    expect([near!.allowedKg! * 9.80665, far!.allowedKg! * 9.80665].map(Math.round)).toEqual([100_000, 20_000]);
    const over = (kN: number) => limited(kN).stops.filter((each) => /structure at leg 1/.test(each.sentence));
    expect(over(near!.verticalDynamicN / 1000 + 0.001)).toEqual([]);
    // The left hang and its mirror.
    expect(over(near!.verticalDynamicN / 1000 - 0.001)).toHaveLength(2);
  });
});

describe('the anchor of a pull-back', () => {
  const anchored = (more: object = {}) => plannedShow((hangs) => Object.assign(hangs[2], { pullBack: { ...pullBack, ...more } }));

  it('is a point of the sheet: pulled up and toward the hang, static and with the factor, in its place', () => {
    const anchor = structurePoints(anchored().picks).find((each) => each.kind === 'anchor')!;
    expect(anchor).toMatchObject({ point: 'Centre, pull-back', xMm: -6000, yMm: 0, heightMm: 0, directionDeg: 0, worstAt: ['at trim'] });
    expect(Math.hypot(anchor.verticalN, anchor.horizontalN)).toBeCloseTo(900, 6);
    expect(Math.hypot(anchor.verticalDynamicN, anchor.horizontalDynamicN)).toBeCloseTo(900 * 1.25, 6);
    expect(anchor.verticalN).toBeLessThan(0);
    expect(anchor.horizontalN).toBeGreaterThan(0);
  });

  it('is held against what it may be pulled with, and asked for where nobody has said', () => {
    const over = (newtons: number) =>
      anchored({ structure: { value: newtons / 1000, unit: 'kN' } }).stops.filter((each) => /anchor of the pull-back/.test(each.sentence));
    expect(over(900 * 1.25 + 0.5)).toEqual([]);
    expect(over(900 * 1.25 - 0.5)).toHaveLength(1);
    expect(anchored().findings.map((each) => each.sentence)).toContainEqual(
      expect.stringMatching(/may carry is not on file for the point Centre, pull-back\./),
    );
  });
});
