import { plannedShow } from '../../../tests/support/planned-show.js';

/** The demo under a regime that asks for one pick slack at this share of a rated load. */
const asked = (usableShare: number, change: (hangs: any[], file: any) => void = () => undefined) =>
  plannedShow((hangs, file) => {
    change(hangs, file);
    file.loadRules[0].onePickSlack = { source: 'agreed in this house', status: 'house rule', usableShare };
  });

describe('one pick slack', () => {
  it('is compared only where the regime asks for it', () => {
    const { picks, findings } = plannedShow();
    expect(picks.hangs.flatMap((hang) => hang.picks.map((pick) => pick.alone!.comparisons))).toEqual(Array(6).fill(undefined));
    expect(findings.some((each) => /slack/.test(each.sentence))).toBe(false);
  });

  it('holds every part of the line against the whole hang and names the moment, to the kilogram', () => {
    const { massKg } = plannedShow().picks.hangs[0]!;
    // Two shackles of 0.62 kg and a sling of 0.9 kg hang at the hook too.
    const hookKg = massKg + 2 * 0.62 + 0.9;
    const slings = (ratedKg: number) =>
      asked(0.8, (_, file) => (file.catalogue.slings[0].ratedLoad = { value: ratedKg, unit: 'kg' })).stops.filter(
        (each) => /Main left.*sling/.test(each.sentence) && /\(with the other pick slack\)/.test(each.sentence),
      );
    expect(slings((hookKg + 1) / 0.8)).toEqual([]);
    const over = slings((hookKg - 1) / 0.8);
    expect(over).toHaveLength(2);
    expect(over[0]!.sentence).toMatch(
      /^Main left, hole C: sling Round sling 1 m would carry 1\u202f683 kg, more than 1\u202f682 kg \(.* while the other pick is slack\)/,
    );
  });

  it('asks the structure for the whole hang with hoist, chain and the factor', () => {
    const { massKg, picks } = plannedShow().picks.hangs[0]!;
    const { hoistKg, chainKg, belowHookKg } = picks[0]!;
    const newtons = 1.25 * (massKg + hoistKg + chainKg + belowHookKg) * 9.80665;
    const stops = (kN: number) =>
      asked(1, (hangs) => (hangs[0].picks[0].structure = { value: kN, unit: 'kN' })).stops.filter((each) =>
        /^Main left, hole C: structure above this point .*with the other pick slack/.test(each.sentence),
      );
    expect(stops(newtons / 1000 + 0.001)).toEqual([]);
    expect(stops(newtons / 1000 - 0.001)).toHaveLength(1);
  });

  it('asks of a shared point the whole hang on the one pick and the worst of the others together', () => {
    const shared = (kN: number) =>
      asked(1, (hangs) => {
        hangs[2].stage = { ...hangs[0].stage, azimuthDeg: 0 };
        for (const hang of [hangs[0], hangs[2]]) Object.assign(hang.picks[0], { point: 'Beam 4', structure: { value: kN, unit: 'kN' } });
      });
    const [left, , centre] = shared(100).picks.hangs;
    const newtons = 1.25 * (left!.picks[0]!.alone!.pointLoadN + centre!.picks[0]!.worst!.pointLoadN);
    const stops = (kN: number) =>
      shared(kN).stops.filter((each) =>
        /^Main left, hole C: structure above the point Beam 4.*with the other pick slack/.test(each.sentence),
      );
    expect(stops(newtons / 1000 + 0.001)).toEqual([]);
    expect(stops(newtons / 1000 - 0.001)).toHaveLength(1);
  });

  it('asks it of the joints as well, at the tilt that the hang then takes, and names the worst', () => {
    const free = asked(0.8).picks.hangs[2]!;
    const links = free.picks[0]!.alone!.comparisons!.filter((each) => each.fact?.part.code === 'rear-link');
    const [link] = links;
    const { position, stage } = link!.fact!.worstAt!;
    expect(stage).toEqual({ code: 'other-slack' });
    // Balance of what hangs below the joint about its front pins: only angles differ from the hang at trim.
    const turn = ((free.picks[0]!.alone!.tiltDownDeg - free.tiltDownDeg) * Math.PI) / 180;
    const pivot = free.outline.boxes[position! - 1]!.frontPivot;
    const below = free.masses.filter(({ what }) => {
      const at = Number(/box (\d+)/.exec(what)?.[1] ?? 0);
      return at >= position!;
    });
    const moment = below.reduce((sum, { massKg, xMm, zMm }) => {
      const [x, z] = [xMm - pivot.xMm, zMm - pivot.zMm];
      return sum + massKg * 9.80665 * (x * Math.cos(turn) + z * Math.sin(turn));
    }, 0);
    expect(link!.value).toBeCloseTo(Math.abs(moment / free.joints[position! - 1]!.leverMm), 3);
    const limited = (newtons: number) =>
      asked(0.8, (_, file) => file.catalogue.boxes.forEach((each: any) => (each.ratedRearLinkN = newtons))).stops.filter((each) =>
        /^Centre, hole C: rear link .*the other pick slack/.test(each.sentence),
      );
    expect(limited((link!.value + 1) / 0.8)).toEqual([]);
    expect(limited((link!.value - 1) / 0.8)).toHaveLength(1);
  });
});
