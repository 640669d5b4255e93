import { standardGravityMps2 } from '#kernel';
import type { LiftMoment, Point } from '#pack-plan';
import { type Node, type Units, formatForce, node } from '../tree/index.js';
import { round } from './draw-hang.js';
import { extentOf, newtonsOf, roundScale } from './lift-scale.js';

const width = 460;
const margin = 104;
const head = 122;
/** Where the figures of the picks stand. */
const labelY = 46;
/** The longest arrow of a lift. */
const longest = 92;
const pixelsHigh = 600;

interface Frame {
  readonly at: (p: Point) => [number, number];
  readonly long: (newtons: number) => number;
  readonly units: Units;
}

/** One moment of a lift in side view with its forces; all moments of one lift stand in one frame and their forces in one scale. */
export function drawLift(moments: readonly LiftMoment[], index: number, units: Units = 'metric'): Node {
  const moment = moments[index]!;
  const { left, right, low, high } = extentOf(moments);
  const scale = Math.min((width - 2 * margin) / Math.max(1, right - left), pixelsHigh / Math.max(1, high - low));
  const mostN = Math.max(...moments.flatMap(newtonsOf));
  const inset = (width - (right - left) * scale) / 2;
  const frame: Frame = {
    at: ({ xMm, zMm }) => [inset + (xMm - left) * scale, head + (high - zMm) * scale],
    long: (newtons) => (newtons / mostN) * longest,
    units,
  };
  const height = round(head + (high - low) * scale + 84);
  return node(
    'svg',
    { viewBox: `0 0 ${width} ${height}`, class: 'draw', role: 'img', 'aria-label': `${moment.name}: side view with its forces` },
    node('text', { x: width - 4, y: 12, class: 'sub', 'text-anchor': 'end' }, 'to the audience →'),
    node('text', { x: 4, y: 12, class: 'num' }, moment.name),
    ...moment.standing.map((corners) => node('polygon', { points: polygon(corners, frame), class: 'ghost' })),
    ...floorUnder(moment, frame),
    node('polygon', { points: polygon(moment.grid, frame), class: 'steel' }),
    ...moment.holes.map((hole) => node('circle', { cx: round(frame.at(hole)[0]), cy: round(frame.at(hole)[1]), r: 1.8, class: 'hole' })),
    ...moment.boxes.flatMap((box) => drawBody(box, frame)),
    ...(moment.withBase ? drawBase(moment, frame) : []),
    ...jointBars(moment, frame),
    ...drawWeight(moment, frame),
    ...moment.picks.flatMap((pick) => drawChain(moment, pick, frame)),
    ...(moment.pull ? drawPull(moment.pull, lowest(moment), frame) : []),
    ...legend(mostN, height, frame),
  );
}

/** About the middle of the lowest box. */
const lowest = ({ boxes, centre }: LiftMoment): Point => {
  const corners = boxes.at(-1)?.corners ?? [centre];
  return { xMm: corners.reduce((sum, p) => sum + p.xMm, 0) / corners.length, zMm: centre.zMm };
};

const polygon = (points: readonly Point[], { at }: Frame): string => points.map((p) => at(p).map(round).join(',')).join(' ');

/** A shaft with its head, from a point along a direction (pixels, down positive). */
function arrow([x, y]: readonly [number, number], [dx, dy]: readonly [number, number], kind = 'force'): Node {
  const long = Math.hypot(dx, dy);
  if (long < 0.5) return node('circle', { cx: round(x), cy: round(y), r: 2, class: 'front' });
  const [ux, uy] = [dx / long, dy / long];
  const [tipX, tipY] = [x + dx, y + dy];
  const barb = Math.min(8, long);
  const corner = (side: number) =>
    `${round(tipX - ux * barb + side * uy * barb * 0.55)},${round(tipY - uy * barb - side * ux * barb * 0.55)}`;
  const shaft = `${round(tipX - ux * barb * 0.8)},${round(tipY - uy * barb * 0.8)}`;
  return node('path', {
    d: `M${round(x)},${round(y)} L${shaft} M${round(tipX)},${round(tipY)} L${corner(1)} L${corner(-1)} Z`,
    class: kind,
  });
}

function drawBody({ position, isFrame, corners }: LiftMoment['boxes'][number], frame: Frame): Node[] {
  const shape = node('polygon', { points: polygon(corners, frame), class: isFrame ? 'steel' : 'box' });
  if (isFrame) return [shape];
  const [x, y] = frame.at({
    xMm: corners.reduce((sum, p) => sum + p.xMm / 4, 0),
    zMm: corners.reduce((sum, p) => sum + p.zMm / 4, 0),
  });
  return [shape, node('text', { x: round(x), y: round(y + 4), class: 'pos small', 'text-anchor': 'middle' }, String(position))];
}

/** The base of the cart, under the lowest box. */
function drawBase({ boxes }: LiftMoment, { at }: Frame): Node[] {
  const corners = boxes.at(-1)?.corners;
  if (!corners) return [];
  const [a, b] = [at(corners[1]!), at(corners[2]!)];
  return [node('line', { x1: round(a[0]), y1: round(a[1] + 4), x2: round(b[0]), y2: round(b[1] + 4), class: 'lid' })];
}

function floorUnder({ standing }: LiftMoment, { at }: Frame): Node[] {
  const feet = standing.flat().map(at);
  if (feet.length === 0) return [];
  const y = round(Math.max(...feet.map((each) => each[1])) + 8);
  const [from, to] = [Math.min(...feet.map((each) => each[0])) - 24, Math.max(...feet.map((each) => each[0])) + 24].map(round);
  return [
    node('line', { x1: from, y1: y, x2: to, y2: y, class: 'brace' }),
    node('text', { x: to, y: (y ?? 0) + 14, class: 'sub', 'text-anchor': 'end' }, 'stands on the floor'),
  ];
}

function drawChain(moment: LiftMoment, pick: LiftMoment['picks'][number], { at, long, units }: Frame): Node[] {
  const [x, y] = at(pick.at);
  const lean = (pick.leansDeg * Math.PI) / 180;
  const up = (pixels: number): [number, number] => [Math.sin(lean) * pixels, -Math.cos(lean) * pixels];
  const top = up((y - 22) / Math.max(0.2, Math.cos(lean)));
  const isFront = moment.picks.every((each) => each.at.xMm <= pick.at.xMm);
  // Beside the chain where the figure stands.
  const beside = x + Math.tan(lean) * (y - labelY);
  const side = isFront ? { x: round(beside + 14), anchor: 'start' } : { x: round(beside - 14), anchor: 'end' };
  return [
    node('line', { x1: round(x), y1: round(y), x2: round(x + top[0]), y2: 22, class: 'chain' }),
    // A pick that would have to push is drawn as it would: downward.
    arrow([x, y], up(long(pick.alongN))),
    node('text', { x: side.x, y: labelY, class: 'num', 'text-anchor': side.anchor }, formatForce(pick.alongN, units)),
    node('text', { x: side.x, y: labelY + 15, class: 'sub', 'text-anchor': side.anchor }, `hole ${pick.hole}`),
  ];
}

function drawWeight({ centre, weightN, massKg }: LiftMoment, { at, long, units }: Frame): Node[] {
  // What swings pulls with more than it weighs.
  const what = weightN > massKg * standardGravityMps2 * (1 + 1e-9) ? 'swinging, pulls with' : 'weight';
  const [x, y] = at(centre).map(round) as [number, number];
  return [
    arrow([x, y], [0, long(weightN)]),
    node('circle', { cx: x, cy: y, r: 5, class: 'cg' }),
    node('text', { x: width - 4, y: 30, class: 'sub', 'text-anchor': 'end' }, `${what} ${formatForce(weightN, units)}`),
  ];
}

/** A force into the body is drawn up to where it acts, one out of it from there. */
function drawPull(pull: NonNullable<LiftMoment['pull']>, centre: Point, { at, long, units }: Frame): Node[] {
  const [x, y] = at(pull.at);
  const newtons = Math.hypot(pull.xN, pull.zN);
  const [dx, dy] = [(pull.xN / newtons) * long(newtons), (-pull.zN / newtons) * long(newtons)];
  const isInto = (centre.xMm - pull.at.xMm) * pull.xN > 0;
  const isForward = isInto ? dx < 0 : dx > 0;
  const far = isInto ? x - dx : x + dx;
  return [
    isInto ? arrow([x - dx, y - dy], [dx, dy]) : arrow([x, y], [dx, dy]),
    node(
      'text',
      { x: round(far + (isForward ? 6 : -6)), y: round(y + 5), class: 'num', 'text-anchor': isForward ? 'start' : 'end' },
      `held ${formatForce(newtons, units)}`,
    ),
  ];
}

/** Beside each joint as bars in the same scale: forward its two front pins together, to the rear its rear link; dashed where pushed. */
function jointBars({ joints, boxes }: LiftMoment, { at, long, units }: Frame): Node[] {
  const most = (of: (joint: LiftMoment['joints'][number]) => number) =>
    joints.reduce((a, b, index) => (Math.abs(of(b)) > Math.abs(of(joints[a]!)) ? index : a), 0);
  const [mostPins, mostLink] = [most((each) => each.frontPinsN), most((each) => each.rearLinkN)];
  return joints.flatMap((joint, index) => {
    const y = round(at(joint.pins)[1]);
    const corners = boxes[index]!.corners.map(at);
    const rearX = Math.min(...corners.map((each) => each[0])) - 5;
    const frontX = at(joint.pins)[0] + 6;
    const bar = (x: number, newtons: number, way: 1 | -1, named: boolean): Node[] => [
      node('line', {
        x1: round(x),
        y1: y,
        x2: round(x + way * long(Math.abs(newtons))),
        y2: y,
        class: newtons < 0 ? 'barforce pushed' : 'barforce',
      }),
      ...(named && Math.abs(newtons) > 0
        ? [
            node(
              'text',
              { x: round(x + way * (long(Math.abs(newtons)) + 4)), y: y + 6, class: 'sub', 'text-anchor': way > 0 ? 'start' : 'end' },
              formatForce(newtons, units),
            ),
          ]
        : []),
    ];
    return [...bar(frontX, joint.frontPinsN, 1, index === mostPins), ...bar(rearX, joint.rearLinkN, -1, index === mostLink)];
  });
}

function legend(mostN: number, height: number, { long, units }: Frame): Node[] {
  const scaleN = roundScale(mostN);
  const x = round(4 + long(scaleN));
  return [
    node('line', { x1: 4, y1: height - 48, x2: x, y2: height - 48, class: 'barforce' }),
    node('text', { x: x + 8, y: height - 44, class: 'sub' }, `${formatForce(scaleN, units)}: arrows and bars are drawn to this scale`),
    node('text', { x: 4, y: height - 24, class: 'sub' }, 'Bars at a joint: forward its two front pins together, to the rear its'),
    node('text', { x: 4, y: height - 8, class: 'sub' }, 'rear link; dashed where they are pushed.'),
  ];
}
