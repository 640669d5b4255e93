import { renderMarkup, runningSheets, stepWords, zeroSpares } from '#drawings';
import { type StepFact, liftMoments } from '#pack-plan';
import { starterSequences } from '../../apps/web/src/features/register/starter-sequences.js';
import { plannedShow } from '../support/planned-show.js';

const g = 9.80665;
const centre = (change: (system: any) => void = () => undefined) => plannedShow((_, file) => change(file.systems[0])).picks.hangs[2]!;
const loadOf = (position: number): number => Math.floor((position - 1) / 4);
const factsOf = (steps: readonly { readonly facts?: readonly StepFact[] }[]) => steps.flatMap((each) => each.facts ?? []);

describe('what stands beside the steps of a lift', () => {
  it('is what cells should read at that moment of that cart load, as the stage plan has it', () => {
    const hang = centre();
    const up = hang.runningOrder.goingUp;
    const below = hang.picks[0]!.belowHookKg;
    const laid = up.flatMap((step) => (step.facts ?? []).map((fact) => ({ fact, load: step.load?.id })));
    expect(laid.map(({ fact, load }) => `${load ?? ''} ${fact.moment}`.trim())).toEqual([
      'Centre 1-4 linked and closed',
      'Centre 1-4 opened and locked',
      'Centre 1-4 opened and locked',
      ...['5-8', '9-12'].flatMap((n) =>
        ['opened on front pins', 'swung back', 'driven down', 'opened and locked'].map((name) => `Centre ${n} ${name}`),
      ),
      'at trim',
    ]);
    for (const { fact, load } of laid) {
      const name = load === undefined ? 'at trim' : `${load}, ${fact.moment}`;
      const stage = hang.stages.find((each) => each.name === name)!;
      expect(fact.tiltDownDeg).toBe(stage.tiltDownDeg);
      fact.cells.forEach((cell, index) => expect(cell.hookLoadKg).toBeCloseTo(stage.picks[index]!.reactionN / g + below, 9));
    }
  });

  it('is the force that holds the load aside, in balance with the chains that lean', () => {
    const hang = centre();
    const held = factsOf(hang.runningOrder.goingUp).filter((each) => each.held !== null);
    const swung = liftMoments(hang).filter((each) => each.pull !== null);
    expect(held).toHaveLength(2);
    held.forEach((fact, index) => {
      const moment = swung[index]!;
      const aside = moment.picks.reduce((sum, { alongN, leansDeg }) => sum + alongN * Math.sin((leansDeg * Math.PI) / 180), 0);
      expect(fact.held!.newtons).toBeCloseTo(Math.abs(aside), 6);
      expect(fact.held!.turnedDeg).toBeGreaterThan(0);
    });
  });

  it('is what kicks coming down: the moment that the rear link carried, the weight below times its distance from the front pins', () => {
    const hang = centre();
    const kicks = factsOf(hang.runningOrder.comingDown).filter((each) => each.kick !== null);
    // The last load comes down first.
    expect(kicks.map((each) => each.kick!.position)).toEqual([9, 5, 1]);
    const moments = liftMoments(hang);
    for (const { kick, moment } of kicks) {
      expect(moment).toBe('rear link drawn');
      const closed = moments.find((each) => each.load === (kick!.position - 1) / 4 && each.name.endsWith('linked and closed'))!;
      const joint = closed.joints[kick!.position - 1]!;
      expect(kick!.linkN).toBe(joint.rearLinkN);
      const lever = Math.hypot(joint.link.xMm - joint.pins.xMm, joint.link.zMm - joint.pins.zMm);
      expect(kick!.newtonMetres).toBeCloseTo((joint.rearLinkN * lever) / 1000, 6);
    }
  });

  it('is a stop where a lock pin is drawn in the air that holds its joint, and none where the link is pulled or the joint stands closed', () => {
    const turned = (deg: number, change: (file: any) => void = () => undefined) =>
      plannedShow((hangs, file) => {
        for (const each of hangs) if (each.mirrorOf === undefined) each.liftTiltDownDeg = deg;
        change(file);
      });
    const told = (show: ReturnType<typeof plannedShow>) => show.stops.filter((each) => each.code === 'lock-pin-under-load');
    expect(told(turned(0))).toEqual([]);
    const up = turned(-30);
    expect(told(up).length).toBeGreaterThan(0);
    const holding = up.picks.hangs.flatMap((hang) => (hang.envelope?.lockPins ?? []).map((pin) => ({ hang, ...pin })));
    expect(told(up)).toHaveLength(new Set(holding.map((each) => each.hang.hang)).size);
    for (const { hang, position, newtons, at } of holding) {
      const moment = liftMoments(hang).find((each) => each.name.endsWith((at as any).moment) && each.load === loadOf(position))!;
      expect(-moment.joints[position - 1]!.rearLinkN).toBeCloseTo(newtons, 6);
      expect(hang.boxes[position - 1]!.splayDeg).not.toBe(0);
    }
    const worst = holding.filter((each) => each.hang.hang === holding[0]!.hang.hang).reduce((a, b) => (b.newtons > a.newtons ? b : a));
    expect(told(up)[0]!.sentence).toMatch(new RegExp(`joint above box ${worst.position}: coming down its lock pin is drawn in the air`));
    // Where the system draws them on the cart nothing is drawn in the air.
    const onCart = (file: any) => file.systems.forEach((system: any) => system.comingDown.forEach((step: any) => delete step.moments));
    expect(told(turned(-30, onCart))).toEqual([]);
  });

  it('is said on paper under its step, with the reason of a hold', () => {
    const hang = centre();
    const swing = hang.runningOrder.goingUp.find((each) => each.facts?.some(({ moment }) => moment === 'swung back'))!;
    const words = stepWords(swing, 'metric');
    expect(words[0]).toBe('Because: the joint closes with force: hands clear, one person on the tag line');
    expect(words[1]).toMatch(
      /^Swung back: grid 2\.0° nose down; cells at the hooks should read C .* kg, L .* kg\. Held aside at the foot of the lowest box with .* kN level/,
    );
    expect(words[2]).toMatch(/^Driven down: .* once the cart carries its load, the least/);
    const plan = { picks: { hangs: [hang] }, findings: [], show: { name: '', venue: '', from: '' } } as never;
    const sheets = runningSheets({ plan, revision: null }, hang).map(renderMarkup).join('');
    for (const each of words) expect(sheets).toContain(each);
    expect(sheets).toMatch(/that much kicks when it is drawn\. Draw it only when the cart stands\./);
  });
});

describe('the usual steps of each family', () => {
  it.each(starterSequences)(
    '$name: first and further carts apart, every hold with its reason, every moment one that its lift has',
    (family) => {
      const hang = centre((system) =>
        Object.assign(system, { closing: family.closing, goingUp: family.goingUp, comingDown: family.comingDown }),
      );
      const { goingUp, comingDown } = hang.runningOrder;
      const steps = [...family.goingUp, ...family.comingDown].flatMap((each) => (typeof each === 'string' ? [] : [each]));
      for (const step of steps)
        expect({ step: step.step, reason: step.hold === (step.why !== undefined) }).toEqual({ step: step.step, reason: true });
      const of = (load: string) => goingUp.filter((each) => each.load?.id === load).map((each) => each.text);
      expect(of('Centre 5-8').length).toBeGreaterThan(0);
      expect(of('Centre 5-8')).toEqual(of('Centre 9-12'));
      expect(of('Centre 1-4')).not.toEqual(of('Centre 5-8'));
      expect(goingUp.filter((each) => each.load?.id === 'Centre 5-8' && each.hold).length).toBeLessThanOrEqual(4);
      const asked = steps.flatMap((each) => each.moments ?? []);
      const found = new Set(factsOf([...goingUp, ...comingDown]).map((each) => each.moment));
      expect([...found].sort()).toEqual([...new Set(asked)].sort());
    },
  );
});

describe('what the sheets ask for', () => {
  it('is a tick at each hold and nowhere else', () => {
    const hang = centre();
    const { goingUp, comingDown } = hang.runningOrder;
    const plan = { picks: { hangs: [hang] }, findings: [], show: { name: '', venue: '', from: '' } } as never;
    const printed = runningSheets({ plan, revision: null }, hang).map(renderMarkup);
    expect(printed.map((each) => each.split('class="tickbox"').length - 1)).toEqual(
      [goingUp, comingDown].map((steps) => steps.filter((each) => each.hold).length),
    );
  });

  it('says of what there is no spare, and whether that was worked out', () => {
    const line = (item: string, model: string, spares: number, levelReached: number | null) => ({ item, model, spares, levelReached });
    const lines = [line('hoist', 'A', 0, null), line('hoist', 'B', 0, null), line('shackle', 'C', 0, 0.991), line('sling', 'D', 1, 0.99)];
    expect(zeroSpares([...lines, line('grid', 'E', 0, null)] as never)).toEqual([
      { none: '0 spare shackles: C.', why: expect.stringMatching(/^With the losses on file 0 suffices for 99\.1/) },
      { none: '0 spare hoists: A, B; grids: E.', why: 'The tour has no losses on file for them, so no number is worked out.' },
    ]);
  });
});
