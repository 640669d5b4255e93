import type { PicksResult } from '#pack-plan';
import { type Node, type Units, formatForce, node } from '../tree/index.js';
import { round } from './draw-hang.js';

/** Stage plan with every point of the show, to scale: the audience is at the bottom, the left of someone on stage at the right. */
export function drawStage(picks: PicksResult, units: Units = 'metric'): Node | null {
  const points = picks.hangs.flatMap((hang) =>
    hang.picks.flatMap((pick) => (pick.stage ? [{ hang: hang.name, pick, ...pick.stage }] : [])),
  );
  if (points.length === 0) return null;
  const span = (values: number[]) => [Math.min(...values) - 1500, Math.max(...values) + 1500] as const;
  const [x0, x1] = span([0, ...points.map((each) => each.xMm)]);
  const [y0, y1] = span([0, ...points.map((each) => each.yMm)]);
  const scale = Math.min(860 / (y1 - y0), 420 / (x1 - x0));
  const at = (xMm: number, yMm: number): [number, number] => [20 + (yMm - y0) * scale, 26 + (xMm - x0) * scale];
  const height = round(26 + (x1 - x0) * scale + 30);
  const [ox, oy] = at(0, 0).map(round) as [number, number];
  return node(
    'svg',
    { viewBox: `0 0 900 ${height}`, class: 'draw', role: 'img', 'aria-label': `Stage plan with ${points.length} points` },
    node('path', { d: `M${ox - 8},${oy} h16 M${ox},${oy - 8} v16`, class: 'brace' }),
    node('text', { x: ox + 10, y: oy - 4, class: 'sub' }, '0, 0'),
    node('text', { x: 450, y: height - 6, class: 'sub', 'text-anchor': 'middle' }, 'audience'),
    ...points.flatMap((each) => {
      const [x, y] = at(each.xMm, each.yMm).map(round) as [number, number];
      // Of the points of one hang the upper has its label above, the others below.
      const above = points.every((other) => other.hang !== each.hang || at(other.xMm, other.yMm)[1] >= at(each.xMm, each.yMm)[1]);
      // Labels near the right edge stand on the left of their point.
      const isRight = x > 560;
      return [
        node('circle', { cx: x, cy: y, r: 5, class: 'wheel' }),
        node(
          'text',
          {
            x: isRight ? x - 9 : x + 9,
            y: y + (above ? -6 : 14),
            class: 'sub',
            'text-anchor': isRight ? 'end' : 'start',
          },
          `${each.hang} ${each.pick.hole} · ${formatForce(each.pick.worst?.pointLoadDynamicN ?? each.pick.pointLoadDynamicN, units)}`,
        ),
      ];
    }),
  );
}
