import { pointRows, scenePoints } from '#drawings';
import { seededRandom } from '#kernel';
import { structurePoints } from '#pack-plan';
import { plannedShow } from '../support/planned-show.js';

/** What the first show of the demo stops for with its hangs changed. */
function planned(change: (hangs: any[]) => void) {
  const { picks, stops } = plannedShow(change);
  return { picks, over: stops };
}

/** A centre of 5 to 12 boxes with splays of its own, on two holes, without limits. */
function anyCentre(random: () => number) {
  const boxes = Array.from({ length: 5 + Math.floor(random() * 8) }, (_, index) => ({
    model: 'Plover',
    splayDeg: index === 0 ? 0.5 : Math.floor(random() * 5),
  }));
  const tiltDownDeg = Math.round(random() * 4 * 10) / 10;
  return (hangs: any[]) => {
    for (const hang of hangs) for (const pick of hang.picks ?? []) delete pick.structure;
    Object.assign(hangs[2], { boxes, tiltDownDeg, liftTiltDownDeg: tiltDownDeg });
  };
}

describe('the structure above a point', () => {
  it('is held against the worst moment: limits between rest and worst stop with stage, point and figure; above the worst none does', () => {
    const random = seededRandom(206);
    let between = 0;
    for (let each = 0; each < 20; each++) {
      const change = anyCentre(random);
      const { picks } = planned(change);
      const pick = picks.hangs[2]!.picks[0]!;
      // The worst by the table of stages, which the checkers have gone over stage by stage.
      const mostN = Math.max(...picks.hangs[2]!.stages.map((stage) => stage.picks[0]!.reactionN));
      const worstN = 1.25 * (mostN + (pick.belowHookKg + pick.hoistKg + pick.chainKg) * 9.80665);
      expect(pick.worst!.pointLoadDynamicN).toBeCloseTo(worstN, 6);
      if (worstN - pick.pointLoadDynamicN < 2) continue;
      between++;
      const limited = (newtons: number) =>
        planned((hangs) => {
          change(hangs);
          hangs[2].picks[0].structure = { value: newtons / 1000, unit: 'kN' };
        }).over.filter(
          (one) => one.fact.code === 'over-rated-load' && 'compared' in one.fact && one.fact.compared.part.code === 'structure',
        );
      const stops = limited((worstN + pick.pointLoadDynamicN) / 2);
      expect(stops).toHaveLength(1);
      expect(stops[0]!.sentence).toMatch(
        /^Centre, hole C: .*structure above this point would carry [\d\u202f]+ kg.*\(Centre \d+(-\d+)?, [a-z ]+\)/,
      );
      expect(limited(worstN + 1)).toEqual([]);
      expect(limited(worstN - 1)).toHaveLength(1);
    }
    expect(between).toBeGreaterThan(12);
  });

  it('carries the sum of the worst of all picks that share it, told once by the name of the point, and one figure on every sheet', () => {
    const random = seededRandom(8);
    for (let each = 0; each < 12; each++) {
      const change = anyCentre(random);
      const shared = (newtons: number) =>
        planned((hangs) => {
          change(hangs);
          Object.assign(hangs[2], { stage: { ...hangs[0].stage, azimuthDeg: 0 } });
          for (const hang of [hangs[0], hangs[2]])
            Object.assign(hang.picks[0], { point: 'Beam 4', structure: { value: newtons / 1000, unit: 'kN' } });
        });
      const { picks } = shared(90_000);
      const own = [picks.hangs[0]!, picks.hangs[2]!].map((hang) => hang.picks[0]!);
      const sumN = own.reduce((sum, pick) => sum + pick.worst!.pointLoadDynamicN, 0);
      const stops = (newtons: number) =>
        shared(newtons).over.filter((one) => /Beam 4/.test(one.sentence) && one.fact.code === 'over-rated-load');
      expect(stops(sumN + 1)).toEqual([]);
      expect(stops(sumN - 1)).toHaveLength(1);
      const point = structurePoints(picks).find((one) => one.point === 'Beam 4')!;
      expect(point.verticalDynamicN).toBeCloseTo(sumN, 6);
      for (const pick of own)
        expect(pick.comparisons.find((one) => one.fact?.part.code === 'structure')!.value * 9.80665).toBeCloseTo(sumN, 6);
      const [head, ...rows] = pointRows(picks);
      const row = rows.find((one) => one[0] === 'Beam 4')!;
      expect(row[head!.indexOf('dynamic_n')]).toBe(Math.round(sumN * 10) / 10);
      expect(scenePoints(picks, 'plan')).toContain(`with factor ${Math.round(sumN)} N`);
    }
  });

  it('is not one point for picks that hang at two places', () => {
    const { over } = planned((hangs) => {
      hangs[0].picks[0].point = 'Beam 4';
      hangs[2].picks[0].point = 'Beam 4';
    });
    const [stop] = over.filter((one) => one.fact.code === 'point-at-two-places');
    expect(stop!.sentence).toMatch(/^Main left, hole C, Centre, hole C name one point, Beam 4, and hang [\d\u202f]+ mm apart/);
  });
});
