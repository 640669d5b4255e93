import { plannedShow } from '../../../tests/support/planned-show.js';
import { liftMoments, worstMoment } from './index.js';

const closings = [
  { gridJoint: 'on the ground', cartJoints: 'swung back and driven down' },
  { gridJoint: 'in the air', cartJoints: 'swung back and driven down' },
  { gridJoint: 'on the ground', cartJoints: 'on the floor at matched tilt' },
  { gridJoint: 'on the ground', cartJoints: 'box by box' },
] as const;

const rad = (deg: number) => (deg * Math.PI) / 180;

describe('the moments of a lift', () => {
  it.each(closings)('are those of the plan to the bit, its grid joined $gridJoint, its carts $cartJoints', (closing) => {
    const { picks } = plannedShow((_, file) => (file.systems[0].closing = closing));
    for (const hang of picks.hangs) {
      // As a screen reads them: through JSON.
      const moments = liftMoments(JSON.parse(JSON.stringify(hang)) as typeof hang);
      expect(moments).toHaveLength(hang.stages.length);
      moments.forEach((moment, index) => {
        const stage = hang.stages[index]!;
        expect([moment.name, moment.tiltDownDeg, moment.massKg]).toEqual([stage.name, stage.tiltDownDeg, stage.massKg]);
        expect(moment.picks.map((each) => [each.hole, each.alongN])).toEqual(stage.picks.map((each) => [each.hole, each.reactionN]));
        const links = moment.joints.map((each) => each.rearLinkN);
        expect(Math.max(...links.map(Math.abs))).toBe(Math.abs(stage.mostLink.newtons));
      });
    }
  });

  it.each(closings)('balance: chains, weight and what holds the load aside, forces and moments, $gridJoint, $cartJoints', (closing) => {
    const { picks } = plannedShow((_, file) => (file.systems[0].closing = closing));
    for (const hang of picks.hangs)
      for (const { picks: chains, weightN, centre, pull, name } of liftMoments(hang)) {
        const forces = [
          ...chains.map(({ at, alongN, leansDeg }) => ({ at, x: alongN * Math.sin(rad(leansDeg)), z: alongN * Math.cos(rad(leansDeg)) })),
          { at: centre, x: 0, z: -weightN },
          ...(pull ? [{ at: pull.at, x: pull.xN, z: pull.zN }] : []),
        ];
        const sum = (of: (force: (typeof forces)[number]) => number) => forces.reduce((total, each) => total + of(each), 0);
        expect({ name, off: Math.abs(sum((each) => each.x)) + Math.abs(sum((each) => each.z)) < 1e-6 * weightN }).toEqual({
          name,
          off: true,
        });
        const moment = sum(({ at, x, z }) => at.xMm * z - at.zMm * x);
        expect({ name, off: Math.abs(moment) < 1e-6 * weightN * 1000 }).toEqual({ name, off: true });
      }
  });

  it('show as the worst the one that the plan compares, of any pick or of one', () => {
    for (const hang of plannedShow().picks.hangs) {
      const moments = liftMoments(hang);
      for (const { hole, worst } of hang.picks) expect(moments[worstMoment(moments, hole)]!.name).toBe(worst!.at);
      const most = hang.picks.reduce((a, b) => (b.worst!.reactionN > a.worst!.reactionN ? b : a));
      expect(moments[worstMoment(moments)]!.name).toBe(most.worst!.at);
    }
  });

  it('leave what the hang is driven down onto standing, the base under what was just lifted, and nothing below at trim', () => {
    const moments = liftMoments(plannedShow().picks.hangs[2]!);
    const driven = moments.find((each) => each.name === 'Centre 5-8, driven down')!;
    expect([driven.boxes.length, driven.standing.length, driven.withBase]).toEqual([4, 4, false]);
    // The front pivot of what stands is the foot of what hangs: the joint closes there.
    expect(driven.standing[0]![0]!.xMm).toBeCloseTo(driven.boxes[3]!.corners[1]!.xMm, 6);
    expect(driven.standing[0]![0]!.zMm).toBeCloseTo(driven.boxes[3]!.corners[1]!.zMm, 6);
    expect(moments.filter((each) => each.withBase).every((each) => each.load !== null)).toBe(true);
    expect(moments.at(-3)).toMatchObject({ name: 'at trim', load: null, withBase: false, standing: [] });
  });

  it('end with links drawn coming down: the load hangs on its front pins and pulls more than it weighs', () => {
    const moments = liftMoments(plannedShow().picks.hangs[2]!);
    const [ninth, fifth] = moments.slice(-2);
    expect([ninth!.name, fifth!.name]).toEqual(['Centre 9-12, coming down, rear link drawn', 'Centre 5-8, coming down, rear link drawn']);
    expect(ninth).toMatchObject({ load: 2, withBase: true });
    expect(ninth!.massKg).toBeCloseTo(913, 6);
    expect(ninth!.weightN).toBeGreaterThan(913 * 9.80665 + 100);
    expect(ninth!.joints[8]!.rearLinkN).toBeCloseTo(0, 6);
    expect(ninth!.joints[8]!.frontPinsN).toBeGreaterThan(291 * 9.80665 + 100);
  });

  it('of an earlier plan are those that it holds', () => {
    const hang = plannedShow().picks.hangs[2]!;
    const { comesDown: _, ...plan } = hang.lift!.plan;
    const earlier = { ...hang, lift: { ...hang.lift!, plan }, stages: hang.stages.slice(0, -2) };
    expect(liftMoments(earlier)).toEqual(liftMoments(hang).slice(0, -2));
  });

  it('have the line of a pull-back taken up, as the plan compares it', () => {
    const [hang] = plannedShow((hangs) => {
      hangs[0].pullBack = {
        position: 24,
        behindMm: 400,
        belowMm: 100,
        anchorForwardMm: -4000,
        anchorBelowMm: 4000,
        tensionN: 600,
        shackles: ['Bow shackle 3.25'],
        slings: [],
      };
    }).picks.hangs;
    const moments = liftMoments(hang!);
    const at = moments.findLastIndex((each) => each.load === null);
    const last = moments[at]!;
    expect(last.name).toBe('at trim, the pull-back taken up');
    expect(last.picks.map((each) => each.alongN)).toEqual(hang!.picks.map((each) => each.reactionN));
    expect(Math.hypot(last.pull!.xN, last.pull!.zN)).toBeCloseTo(600, 6);
    expect(moments.slice(at - 2, at).map((each) => each.name)).toEqual(['at trim', 'at trim, the pull-back half taken up']);
    expect(Math.hypot(moments[at - 1]!.pull!.xN, moments[at - 1]!.pull!.zN)).toBeCloseTo(300, 6);
  });

  it('are none of a plan that does not hold what they are computed from', () => {
    const { lift: _, ...earlier } = plannedShow().picks.hangs[0]!;
    expect(liftMoments(earlier)).toEqual([]);
  });
});
