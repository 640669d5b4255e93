import type { HangResult } from '#pack-plan';
import { type Node, type Units, formatForce, node } from '../tree/index.js';
import { round } from './draw-hang.js';
import { drawTrim, trimText } from './draw-trim.js';

const width = 460;

/** A hang seen from the stage, to scale: boxes as wide as they are, the points above with what they carry, legs of bridles to their anchors. */
export function drawRear(hang: HangResult, units: Units = 'metric'): Node {
  const heights = hang.outline.boxes.map((box) => ({ box, zs: box.corners.map((corner) => corner.zMm) }));
  const low = Math.min(...heights.flatMap(({ zs }) => zs));
  const high = Math.max(...hang.outline.grid.map((corner) => corner.zMm));
  // Legs are drawn by where their anchors stand across the stage from the hook.
  const legs = hang.picks.flatMap((pick) =>
    (pick.bridle?.legs ?? []).map((leg, index) => ({
      pick,
      index,
      leg,
      acrossMm: leg.stage && pick.stage ? leg.stage.yMm - pick.stage.yMm : 0,
      upMm: Math.sqrt(Math.max(0, leg.lengthMm ** 2 - (leg.lengthMm * Math.cos((leg.fromHorizontalDeg * Math.PI) / 180)) ** 2)),
    })),
  );
  const half = Math.max(
    900,
    hang.outline.gridWidthMm / 2,
    ...hang.outline.boxes.map((box) => box.widthMm / 2),
    ...legs.map((each) => Math.abs(each.acrossMm) + 200),
  );
  const above = Math.max(0, ...legs.map((each) => each.upMm));
  const scale = Math.min((width - 150) / (2 * half), 620 / (high - low + above));
  const head = 96 + above * scale;
  const x = (acrossMm: number) => round(width / 2 + acrossMm * scale);
  const z = (mm: number) => round(head + (high - mm) * scale);
  const height = round(head + (high - low) * scale + 30);
  const hook = round(head - 56);
  return node(
    'svg',
    { viewBox: `0 0 ${width} ${height}`, class: 'draw', role: 'img', 'aria-label': `${hang.name} from behind with its points` },
    node('text', { x: width - 4, y: 12, class: 'sub', 'text-anchor': 'end' }, 'seen from the stage'),
    ...legs.flatMap(({ pick, index, leg, acrossMm, upMm }) => [
      node('line', { x1: x(0), y1: hook, x2: x(acrossMm), y2: round(hook - upMm * scale), class: 'chain' }),
      node(
        'text',
        { x: x(acrossMm), y: round(hook - upMm * scale - 4), class: 'sub', 'text-anchor': acrossMm < 0 ? 'end' : 'start' },
        `${pick.hole} leg ${index + 1}: ${formatForce(leg.tensionDynamicN, units)}`,
      ),
    ]),
    node('line', { x1: x(0), y1: hook, x2: x(0), y2: z(high), class: 'chain' }),
    node('path', { d: `M${x(0) - 6},${hook + 6} h12 v22 h-12 z`, class: 'hoist' }),
    ...hang.picks.map((pick, index) =>
      node(
        'text',
        { x: x(0) + 12, y: hook + 14 + 15 * index, class: 'sub' },
        `${pick.point}: ${formatForce(pick.worst?.pointLoadDynamicN ?? pick.pointLoadDynamicN, units)} with its factor`,
      ),
    ),
    node('rect', {
      x: x(-hang.outline.gridWidthMm / 2),
      y: z(high),
      width: round(hang.outline.gridWidthMm * scale),
      height: Math.max(3, round((high + 10) * scale)),
      class: 'steel',
    }),
    ...heights.flatMap(({ box, zs }) => {
      const [top, bottom] = [Math.max(...zs), Math.min(...zs)];
      return [
        node('rect', {
          x: x(-box.widthMm / 2),
          y: z(top),
          width: round(box.widthMm * scale),
          height: round((top - bottom) * scale),
          class: 'box',
        }),
        node(
          'text',
          { x: x(0), y: round((z(top) + z(bottom)) / 2 + 4), class: 'pos small', 'text-anchor': 'middle' },
          String(box.position),
        ),
      ];
    }),
    ...drawTrim(hang, width, z, units),
    node('text', { x: 4, y: height - 8, class: 'sub' }, trimText(hang, units)),
  );
}
