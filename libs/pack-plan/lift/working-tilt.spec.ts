import { sentencesOf } from '../../../tests/support/demo-tour.js';
import { plannedShow } from '../../../tests/support/planned-show.js';
import { liftMoments } from './lift-moments.js';

const told = ({ findings }: ReturnType<typeof plannedShow>, code: string) => sentencesOf({ findings } as never, code);

/** The centre of the demo on one pick, with what its rigging system is worked at. */
const onePick = (limits: object = {}, more: (hang: any, file: any) => void = () => undefined) =>
  plannedShow((hangs, file) => {
    Object.assign(file.systems[0], limits);
    const { tiltDownDeg: _tilt, liftTiltDownDeg: _lift, ...rest } = hangs[2];
    hangs[2] = { ...rest, picks: [rest.picks[0]] };
    more(hangs[2], file);
  });
const tiltsOf = (show: ReturnType<typeof plannedShow>) =>
  show.picks.hangs[2]!.stages.filter((each) => each.name !== 'at trim').map((each) => each.tiltDownDeg);

describe('a hang on one pick', () => {
  it('whose system says nothing of its working tilt is told how far from level its grid stands, and when', () => {
    const show = onePick();
    const most = tiltsOf(show).reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
    expect(told(show, 'no-working-tilt')).toEqual([
      `Centre is lifted on one pick: at Centre 1-4, base off its grid stands ${Math.abs(most).toFixed(1)}° nose up. How far the rigging system Saltmarsh rig is worked from level is not on file; ask the maker.`,
    ]);
    expect(told(plannedShow(), 'no-working-tilt')).toEqual([]);
  });

  it('beyond the working tilt is a stop, a thousandth of a degree inside it is none', () => {
    const most = -Math.min(...tiltsOf(onePick()));
    expect(told(onePick({ mostNoseUpDeg: most + 0.001 }), 'beyond-working-tilt')).toEqual([]);
    const beyond = onePick({ mostNoseUpDeg: most - 0.001 });
    expect(beyond.stops.filter((each) => each.code === 'beyond-working-tilt')).toHaveLength(1);
    expect(told(beyond, 'beyond-working-tilt')[0]).toMatch(
      /^Centre: at Centre 1-4, base off the grid stands 26\.\d° nose up; the rigging system Saltmarsh rig is worked up to 2\d\.\d° nose up\./,
    );
    // Nose down is a limit of its own.
    expect(told(onePick({ mostNoseDownDeg: 0.1 }), 'beyond-working-tilt')[0]).toMatch(/worked up to 0\.1° nose down/);
  });

  it('is told what would do, and each of it does when it is done', () => {
    const limits = { mostNoseUpDeg: 20, mostNoseDownDeg: 20 };
    const [sentence] = told(onePick(limits), 'beyond-working-tilt');
    const [, holes] = /another hole \(([^)]*)\)/.exec(sentence!)!;
    for (const hole of holes!.split(', ')) {
      const other = onePick(limits, (hang) => (hang.picks[0].hole = hole));
      expect({ hole, said: told(other, 'beyond-working-tilt') }).toEqual({ hole, said: [] });
    }
    const [, front, rear] = /two points, at (\w+) and (\w+)/.exec(sentence!)!;
    const two = onePick(limits, (hang) =>
      Object.assign(hang, { tiltDownDeg: 2, liftTiltDownDeg: 0, picks: [front, rear].map((hole) => ({ ...hang.picks[0], hole })) }),
    );
    expect([...told(two, 'beyond-working-tilt'), ...told(two, 'cannot-lift-like-this')]).toEqual([]);
    // A hole that is not named does not do.
    const left = onePick(limits, (hang, file) => {
      const named = holes!.split(', ');
      hang.picks[0].hole = file.catalogue.grids[0].holes.find((each: any) => each.hole !== 'C' && !named.includes(each.hole)).hole;
    });
    expect(told(left, 'beyond-working-tilt')).toHaveLength(1);
  });

  it('is told what a tail line would have to hold, in balance about the hole', () => {
    const show = onePick({ mostNoseUpDeg: 10 });
    const [, said] = /tail line at the foot of the lowest box: ([\d\u202f]+) N level, to the rear/.exec(
      told(show, 'beyond-working-tilt')[0]!,
    )!;
    // Box by box at 10 degrees nose up, by hand: weights and centres of grid and the first four with their loom, about hole C.
    const box = (deg: number, massKg: number, px: number, pz: number) => {
      const [s, c] = [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
      return { massKg, x: px - 262 * c - 168 * s, next: [px - 340 * s, pz - 340 * c] as const };
    };
    const bodies: { massKg: number; x: number; next: readonly [number, number] }[] = [];
    let at: readonly [number, number] = [0, 0];
    for (const [deg, massKg] of [
      [-9.5, 79],
      [-9.5, 62],
      [-9.5, 62],
      [-8.5, 62],
    ] as const) {
      bodies.push(box(deg, massKg, at[0], at[1]));
      at = bodies.at(-1)!.next;
    }
    const [s, c] = [Math.sin((-10 * Math.PI) / 180), Math.cos((-10 * Math.PI) / 180)];
    const grid = { massKg: 92, x: -300 * c + 70 * s };
    const hole = { x: 10 * c + 130 * s, z: -10 * s + 130 * c };
    const moment = [grid, ...bodies].reduce((sum, each) => sum + each.massKg * 9.80665 * (each.x - hole.x), 0);
    expect(Number(said!.replace(/\u202f/g, ''))).toBe(Math.round(Math.abs(moment / (hole.z - at[1]))));
  });

  it('has a hold in its lift sequence before the cart load that cannot be lifted so', () => {
    const sequence = onePick({ mostNoseUpDeg: 20 }).picks.hangs[2]!.runningOrder;
    const held = sequence.goingUp.filter((each) => each.text.startsWith('Do not lift as planned'));
    expect(held.map((each) => [each.load!.id, each.hold])).toEqual([
      ['Centre 1-4', true],
      ['Centre 5-8', true],
    ]);
    expect(held[0]!.text).toMatch(
      /^Do not lift as planned: at Centre 1-4, linked and closed the grid would stand 24\.\d° nose up\. Plan it otherwise first\.$/,
    );
    const first = sequence.goingUp.findIndex((each) => each.load?.id === 'Centre 1-4');
    expect(sequence.goingUp[first]).toBe(held[0]);
    const fine = plannedShow().picks.hangs[2]!.runningOrder;
    expect([...fine.goingUp, ...fine.comingDown].filter((each) => each.text.startsWith('Do not lift'))).toEqual([]);
  });
});

describe('a pick that would have to push while it is lifted', () => {
  const leaning = (deg: number) => plannedShow((hangs) => (hangs[2].liftTiltDownDeg = deg));

  it('is told a tilt that does, and with it none pushes', () => {
    const [sentence] = told(leaning(-30), 'cannot-lift-like-this');
    const [, figure, way] = /the grid ([\d.]+)° nose (up|down) while it is lifted/.exec(sentence!)!;
    const turned = leaning(Number(figure) * (way === 'up' ? -1 : 1));
    expect(told(turned, 'cannot-lift-like-this')).toEqual([]);
    for (const moment of liftMoments(turned.picks.hangs[2]!))
      for (const pick of moment.picks) expect(pick.alongN).toBeGreaterThanOrEqual(0);
    // Half a degree further from level does not, unless it is the end of what was tried.
    expect(Number(figure)).toBeLessThanOrEqual(10);
  });

  it('holds its lift sequence too', () => {
    const { goingUp } = leaning(-30).picks.hangs[2]!.runningOrder;
    expect(goingUp.some((each) => each.hold && /would have to push with [\d\u202f]+ N\. Plan it otherwise first\.$/.test(each.text))).toBe(
      true,
    );
  });
});
