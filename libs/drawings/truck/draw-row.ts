import type { TruckResultOne } from '#pack-plan';
import { hatch, round } from '../hang/index.js';
import { type Node, node } from '../tree/index.js';

const width = 360;

/** One row as the loader sees it from the door: left wall at the left, the floor at the bottom, to scale. */
export function drawRow(truck: TruckResultOne, row: Pick<TruckResultOne['rows'][number], 'number' | 'pieces'>): Node {
  const scale = (width - 20) / truck.innerWidthMm;
  const high = truck.innerHeightMm * scale;
  const ground = round(10 + high);
  // What stands toward the nose is drawn first: the rest stands before it.
  const pieces = truck.placements.filter((each) => row.pieces.includes(each.id)).sort((a, b) => a.xMm - b.xMm);
  return node(
    'svg',
    {
      viewBox: `0 0 ${width} ${ground + 26}`,
      class: 'draw',
      role: 'img',
      'aria-label': `Row ${row.number} of truck ${truck.id} seen from the door: ${row.pieces.join(', ')}`,
    },
    hatch(),
    node('path', { d: `M10,10 V${ground} H${width - 10} V10`, class: 'truck' }),
    ...pieces.flatMap((each) => {
      const [x, w, h] = [10 + each.yMm * scale, each.acrossMm * scale, each.heightMm * scale].map(round) as [number, number, number];
      const y = round(ground - (each.zMm + each.heightMm) * scale);
      const size = ['big', '', 'tiny'][[12, 8.4].findIndex((wide) => w >= each.id.length * wide + 4)] ?? 'tiny';
      return [
        node('rect', {
          x: x + 1,
          y: y + 1,
          width: Math.max(1, w - 2),
          height: Math.max(1, h - 2),
          class: each.tag === null ? 'piece' : 'piece wrong',
        }),
        node('text', { x: round(x + w / 2), y: round(y + h / 2 + 5), class: `mono ${size}`, 'text-anchor': 'middle' }, each.id),
      ];
    }),
    node('text', { x: width / 2, y: ground + 19, class: 'sub', 'text-anchor': 'middle' }, 'seen from the door'),
  );
}
