import { type PicksResult, structurePoints } from '#pack-plan';
import { type Node, type Units, formatForce, formatLength, node } from '../tree/index.js';
import { round } from './draw-hang.js';
import { labelSize, placeLabels } from './place-labels.js';

const width = 900;
/** A length to measure with, about a fifth of what is drawn. */
const barMm = (acrossMm: number): number => [500, 1000, 2000, 5000, 10_000, 20_000].findLast((each) => each <= acrossMm / 5) ?? 500;

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
  const [ox, oy] = at(0, 0).map(round) as [number, number];
  const datum = { left: ox - 40, right: ox + 9, top: oy - 16, bottom: oy + 9 };
  const labels = placeLabels(
    points.map((each) => {
      const [x, y] = at(each.xMm, each.yMm).map(round) as [number, number];
      return { x, y, text: `${each.point} · ${formatForce(each.verticalDynamicN, units)}` };
    }),
    width,
    [datum],
  );
  const deepest = Math.max(26 + (x1 - x0) * scale, ...labels.map((each) => each.labelY));
  const height = round(deepest + 40);
  const bar = barMm(y1 - y0);
  return node(
    'svg',
    { viewBox: `0 0 ${width} ${height}`, class: 'draw', role: 'img', 'aria-label': `Stage plan with ${points.length} points` },
    node('path', { d: `M${ox - 8},${oy} h16 M${ox},${oy - 8} v16`, class: 'brace' }),
    node('text', { x: ox - 10, y: oy - 4, class: 'sub', 'text-anchor': 'end' }, '0, 0'),
    node('text', { x: width / 2, y: height - 8, class: 'sub', 'text-anchor': 'middle' }, 'audience'),
    node('line', { x1: 20, y1: height - 22, x2: round(20 + bar * scale), y2: height - 22, class: 'barforce' }),
    node('text', { x: 20, y: height - 8, class: 'sub' }, formatLength(bar, units)),
    ...labels.flatMap(({ x, y, labelX, labelY, isLed, text }) => [
      ...(isLed
        ? [
            node('line', {
              x1: x,
              y1: y,
              x2: round(labelX < x ? labelX + text.length * labelSize.letter : labelX),
              y2: round(labelY - 4),
              class: 'tick',
            }),
          ]
        : []),
      node('circle', { cx: x, cy: y, r: 5, class: 'wheel' }),
      labelX < x
        ? node('text', { x: round(labelX + text.length * labelSize.letter), y: round(labelY), class: 'sub', 'text-anchor': 'end' }, text)
        : node('text', { x: round(labelX), y: round(labelY), class: 'sub' }, text),
    ]),
  );
}
