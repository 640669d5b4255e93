import type { CartLoad, Stack } from '#pack-plan';
import { hatch } from '../hang/index.js';
import { type Node, node } from '../tree/index.js';

/** A cart as it stands: lid, boxes top first with slot, serial and splay, the front marked, base and wheels. */
export function drawCart(load: CartLoad, wrong: ReadonlySet<number> = new Set()): Node {
  const rows = Math.max(load.capacity, load.boxes.length, 1);
  const base = 22 + rows * 46;
  const empty = rows - load.boxes.length;
  return node(
    'svg',
    {
      viewBox: `0 0 232 ${base + 34}`,
      class: 'draw',
      role: 'img',
      'aria-label': `Cart ${load.cart ?? 'not found'}, ${load.boxes.length} boxes, top first`,
    },
    hatch(),
    node('path', { d: 'M14,16 H218', class: 'lid' }),
    node('text', { x: 216, y: 9, class: 'sub', 'text-anchor': 'end' }, 'front'),
    ...load.boxes.flatMap((box, index) => {
      const y = 22 + (empty + index) * 46;
      return [
        node('rect', { x: 22, y, width: 188, height: 42, class: box.serial === null || wrong.has(box.slot) ? 'box wrong' : 'box' }),
        node('rect', { x: 200, y, width: 10, height: 42, class: 'front' }),
        node('text', { x: 34, y: y + 28, class: 'slot' }, String(box.slot)),
        node('text', { x: 58, y: y + 27, class: 'mono' }, box.serial ?? 'missing'),
        node('text', { x: 192, y: y + 27, class: 'ang', 'text-anchor': 'end' }, `${box.splayDeg}°`),
      ];
    }),
    node('path', { d: `M10,${base + 4} H222 v8 H10 Z`, class: 'steel' }),
    node('circle', { cx: 34, cy: base + 20, r: 6, class: 'wheel' }),
    node('circle', { cx: 198, cy: base + 20, r: 6, class: 'wheel' }),
  );
}

/** Carts of the floor side by side, boxes as they stand; `marked` boxes are hatched. */
export function drawStacks(stacks: readonly Stack[], marked: ReadonlySet<string> = new Set(), across = 6): Node {
  const cell = { width: 118, row: 24 };
  const tallest = Math.max(1, ...stacks.map((each) => each.capacity));
  const rowHeight = tallest * cell.row + 54;
  const rows = Math.max(1, Math.ceil(stacks.length / across));
  return node(
    'svg',
    {
      viewBox: `0 0 ${across * cell.width} ${rows * rowHeight}`,
      class: 'draw',
      role: 'img',
      'aria-label': `${stacks.length} carts as they stand`,
    },
    hatch(),
    ...stacks.flatMap((stack, index) => {
      const x = (index % across) * cell.width + 8;
      const floor = Math.floor(index / across) * rowHeight + tallest * cell.row + 10;
      return [
        ...stack.boxes.flatMap((serial, slot) => {
          const y = floor - (stack.boxes.length - slot) * cell.row;
          return [
            node('rect', { x, y, width: 100, height: cell.row - 2, class: marked.has(serial) ? 'box wrong' : 'box' }),
            node('text', { x: x + 50, y: y + 16, class: 'mono small', 'text-anchor': 'middle' }, serial),
          ];
        }),
        node('path', { d: `M${x - 4},${floor} h108 v5 h-108 z`, class: 'steel' }),
        node('text', { x: x + 50, y: floor + 22, class: 'cart', 'text-anchor': 'middle' }, stack.cart),
      ];
    }),
  );
}
