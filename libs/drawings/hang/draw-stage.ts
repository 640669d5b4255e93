import { type PicksResult, structurePoints } from '#pack-plan';
import { type Node, type Units, formatForce, node } from '../tree/index.js';
import { round } from './draw-hang.js';

/** Stage plan with every point of the show, to scale: the audience is at the bottom, the left of someone on stage at the right. */
export function drawStage(picks: PicksResult, units: Units = 'metric'): Node | null {
  const points = structurePoints(picks).flatMap((each) =>
    each.xMm === null || each.yMm === null ? [] : [{ ...each, xMm: each.xMm, yMm: each.yMm }],
  );
  if (points.length === 0) return null;
  const span = (values: number[]) => [Math.min(...values) - 1500, Math.max(...values) + 1500] as const;
  const [x0, x1] = span([0, ...points.map((each) => each.xMm)]);
  const [y0, y1] = span([0, ...points.map((each) => each.yMm)]);
  const scale = Math.min(860 / (y1 - y0), 420 / (x1 - x0));
  const at = (xMm: number, yMm: number): [number, number] => [20 + (yMm - y0) * scale, 26 + (xMm - x0) * scale];
  const height = round(26 + (x1 - x0) * scale + 30);
  const [ox, oy] = at(0, 0).map(round) as [number, number];
  const labels = apartFromOneAnother(
    points.map((each) => {
      const [x, y] = at(each.xMm, each.yMm).map(round) as [number, number];
      return { x, y, text: `${each.point} · ${formatForce(each.verticalDynamicN, units)}` };
    }),
  );
  return node(
    'svg',
    { viewBox: `0 0 900 ${height}`, class: 'draw', role: 'img', 'aria-label': `Stage plan with ${points.length} points` },
    node('path', { d: `M${ox - 8},${oy} h16 M${ox},${oy - 8} v16`, class: 'brace' }),
    node('text', { x: ox - 10, y: oy - 4, class: 'sub', 'text-anchor': 'end' }, '0, 0'),
    node('text', { x: 450, y: height - 6, class: 'sub', 'text-anchor': 'middle' }, 'audience'),
    ...labels.flatMap(({ x, y, labelX, labelY, anchor, text }) => [
      node('circle', { cx: x, cy: y, r: 5, class: 'wheel' }),
      node('text', { x: labelX, y: labelY, class: 'sub', 'text-anchor': anchor }, text),
    ]),
  );
}

interface Labelled {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** About what a letter of a label is wide, and its line high. */
const [letterWidth, lineHeight] = [6.6, 14];

/** A label beside each point, on the left of those near the right edge; moved down line by line until it lies on no other. */
function apartFromOneAnother(points: readonly Labelled[]) {
  const taken: { left: number; right: number; y: number }[] = [];
  return points.map((point) => {
    const isRight = point.x > 560;
    const labelX = isRight ? point.x - 9 : point.x + 9;
    const wide = point.text.length * letterWidth;
    const [left, right] = isRight ? [labelX - wide, labelX] : [labelX, labelX + wide];
    const isFree = (y: number) => taken.every((each) => right < each.left || left > each.right || Math.abs(each.y - y) >= lineHeight);
    let labelY = point.y + 4;
    while (!isFree(labelY)) labelY += lineHeight;
    taken.push({ left, right, y: labelY });
    return { ...point, labelX, labelY, anchor: isRight ? 'end' : 'start' };
  });
}
