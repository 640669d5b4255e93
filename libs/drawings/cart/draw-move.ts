import type { Floor, MoveMade } from '#pack-plan';
import { type Node, node } from '../tree/index.js';

const row = { height: 44, step: 46, width: 122 };
const width = 360;

/** One box move: where the box is taken from, where it goes, and the boxes that stand there. Top boxes are drawn on top. */
export function drawMove(floor: Floor, { box, from, to }: MoveMade): Node {
  const on = (cart: string) => floor.carts.find((each) => each.cart === cart)?.boxes ?? [];
  const source = from === 'floor' ? [box] : on(from);
  const target = to === 'floor' ? [box] : [box, ...on(to).filter((each) => each !== box)];
  const rows = Math.max(source.length, target.length, 1);
  const ground = 12 + rows * row.step;
  return node(
    'svg',
    {
      viewBox: `0 0 ${width} ${ground + 44}`,
      class: 'draw',
      role: 'img',
      'aria-label': `${box} from ${placeWords(from)} to ${placeWords(to)}${to === 'floor' ? '' : ', slot 1'}`,
    },
    ...standing(from, source, { x: 30, ground, filled: box, isNumbered: false }),
    ...standing(to, target, { x: 212, ground, ghost: box, isNumbered: to !== 'floor' }),
    ...arrow(ground - source.length * row.step + row.height / 2, ground - target.length * row.step + row.height / 2),
  );
}

interface At {
  readonly x: number;
  readonly ground: number;
  readonly filled?: string;
  readonly ghost?: string;
  readonly isNumbered: boolean;
}

function standing(place: string, boxes: readonly string[], { x, ground, filled, ghost, isNumbered }: At): Node[] {
  const middle = x + row.width / 2;
  return [
    ...boxes.flatMap((serial, index) => {
      const y = ground - (boxes.length - index) * row.step;
      const kind = serial === filled ? 'now' : serial === ghost ? 'ghost' : 'box';
      return [
        node('rect', { x, y, width: row.width, height: row.height, class: kind }),
        node('text', { x: middle, y: y + 29, class: kind === 'now' ? 'mono big onnow' : 'mono big', 'text-anchor': 'middle' }, serial),
        ...(isNumbered ? [node('text', { x: x - 8, y: y + 29, class: 'sub num', 'text-anchor': 'end' }, String(index + 1))] : []),
      ];
    }),
    ...(place === 'floor'
      ? [node('path', { d: `M${x - 14},${ground} h${row.width + 28}`, class: 'way' })]
      : [
          node('path', { d: `M${x - 6},${ground} h${row.width + 12} v5 h${-(row.width + 12)} z`, class: 'steel' }),
          node('circle', { cx: x + 14, cy: ground + 11, r: 6, class: 'wheel' }),
          node('circle', { cx: x + row.width - 14, cy: ground + 11, r: 6, class: 'wheel' }),
        ]),
    node('text', { x: middle, y: ground + 38, class: 'big cart', 'text-anchor': 'middle' }, place),
  ];
}

/** From the box as it stands to where it goes, over what is between them. */
function arrow(fromY: number, toY: number): Node[] {
  const [start, end] = [156, 194];
  return [
    node('path', { d: `M${start},${fromY} C ${start + 22},${fromY} ${end - 34},${toY} ${end - 8},${toY}`, class: 'way' }),
    node('path', { d: `M${end - 12},${toY - 8} l14,8 l-14,8 z`, class: 'steel' }),
  ];
}

const placeWords = (place: string): string => (place === 'floor' ? 'the floor' : place);
