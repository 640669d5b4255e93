import { liftMoments } from '#pack-plan';
import { plannedShow } from '../../../tests/support/planned-show.js';
import { type Node, renderMarkup } from '../tree/index.js';
import { drawLift } from './draw-lift.js';
import { newtonsOf, roundScale } from './lift-scale.js';

const all = (of: Node, tag: string): Node[] => [
  ...(of.tag === tag ? [of] : []),
  ...of.children.flatMap((each) => (typeof each === 'string' ? [] : all(each, tag))),
];
const lengthOf = ({ attributes: { x1, x2, y1, y2 } }: Node) => Math.hypot(Number(x1) - Number(x2), Number(y1) - Number(y2));

/** From the start of an arrow to its tip. */
function arrowLength({ attributes }: Node): number {
  const [x, y, tipX, tipY] = String(attributes['d'])
    .match(/^M([-\d.]+),([-\d.]+) L\S+ M([-\d.]+),([-\d.]+)/)!
    .slice(1)
    .map(Number) as [number, number, number, number];
  return Math.hypot(tipX - x, tipY - y);
}

describe('a moment of a lift', () => {
  const hang = plannedShow().picks.hangs[2]!;
  const moments = liftMoments(hang);

  it('that swings is told to pull with more than it weighs, and none else', () => {
    const told = moments.map((_, index) => /(weight|swinging, pulls with) /.exec(renderMarkup(drawLift(moments, index)))![1]);
    expect(told.map((each, index) => [each !== 'weight', moments[index]!.name.endsWith('rear link drawn')])).toEqual(
      told.map((each) => [each !== 'weight', each !== 'weight']),
    );
    expect(told.filter((each) => each !== 'weight')).toHaveLength(2);
  });

  it('has its forces in one scale, that of every other moment, and names a length of it', () => {
    const mostN = Math.max(...moments.flatMap(newtonsOf));
    moments.forEach((moment, index) => {
      const drawn = drawLift(moments, index);
      const bars = all(drawn, 'line').filter((each) => String(each.attributes['class']).startsWith('barforce'));
      // Corners are written to a tenth of a pixel.
      const perNewton = 92 / mostN;
      expect(Math.abs(lengthOf(bars.at(-1)!) - roundScale(mostN) * perNewton)).toBeLessThan(0.11);
      const wanted = moment.joints.flatMap((each) => [each.frontPinsN, each.rearLinkN]);
      bars.slice(0, -1).forEach((bar, at) => {
        expect(Math.abs(lengthOf(bar) - Math.abs(wanted[at]!) * perNewton)).toBeLessThan(0.11);
        expect(String(bar.attributes['class']).includes('pushed')).toBe(wanted[at]! < 0);
      });
      const arrows = all(drawn, 'path').filter((each) => each.attributes['class'] === 'force');
      const forces = [
        moment.weightN,
        ...moment.picks.map((each) => Math.abs(each.alongN)),
        ...(moment.pull ? [Math.hypot(moment.pull.xN, moment.pull.zN)] : []),
      ];
      expect(arrows).toHaveLength(forces.length);
      arrows.forEach((each, at) => expect(Math.abs(arrowLength(each) - forces[at]! * perNewton)).toBeLessThan(0.3));
    });
  });

  it('stands in the frame of all the others, and says what it is', () => {
    const boxes = moments.map((_, index) => drawLift(moments, index).attributes['viewBox']);
    expect(new Set(boxes).size).toBe(1);
    expect(renderMarkup(drawLift(moments, 0))).toContain('aria-label="Centre 1-4, linked and closed: side view with its forces"');
  });
});
