import type { Placement, TruckResultOne } from '#pack-plan';
import { round } from '../hang/index.js';
import { type Node, node } from '../tree/index.js';

const width = 900;

/** What a load space is called by its kind and id. */
export function spaceName({ kind, id }: Pick<TruckResultOne, 'kind' | 'id'>): string {
  const name = kind ?? 'truck';
  return `${name[0]!.toUpperCase()}${name.slice(1)} ${id}`;
}

/** What is ticked off while it is loaded: rows, or steps of stowing. */
export const partName = ({ kind }: Pick<TruckResultOne, 'kind'>): 'row' | 'step' => (kind ? 'step' : 'row');

/** A truck from above, to scale, nose at the left, so that the left wall of someone who looks in from the door is at the bottom; rows numbered, what stays where it stands with a thick edge; what stands on top of something is not drawn here. */
export function drawTruckPlan(truck: TruckResultOne, done: ReadonlySet<number> = new Set()): Node {
  const kept = new Set(truck.kept?.map((each) => each.piece));
  const scale = (width - 20) / truck.innerLengthMm;
  const across = truck.innerWidthMm * scale;
  const height = round(across + 64);
  return node(
    'svg',
    {
      viewBox: `0 0 ${width} ${height}`,
      class: 'draw',
      role: 'img',
      'aria-label': `${spaceName(truck)} from above, nose at the left, ${truck.rows.length} ${truck.kind ? 'steps' : 'rows'}`,
    },
    node('text', { x: 12, y: 14, class: 'sub' }, 'nose'),
    node('text', { x: width - 12, y: 14, class: 'sub', 'text-anchor': 'end' }, 'door · first off'),
    node('text', { x: width - 12, y: round(across + 58), class: 'sub', 'text-anchor': 'end' }, 'left wall, looking in from the door'),
    node('rect', { x: 10, y: 20, width: width - 20, height: round(across), class: 'truck' }),
    ...truck.placements
      .filter((each) => each.zMm === 0)
      .flatMap((each) => {
        const [x, y, w, h] = [
          10 + each.xMm * scale,
          20 + (truck.innerWidthMm - each.yMm - each.acrossMm) * scale,
          each.alongMm * scale,
          each.acrossMm * scale,
        ].map(round) as [number, number, number, number];
        return [
          node('rect', { x: x + 1, y: y + 1, width: Math.max(1, w - 2), height: Math.max(1, h - 2), class: pieceClass(each, kept) }),
          ...label(each.id, x, y, w, h),
        ];
      }),
    // Steps of stowing stand one over another: seen from above their numbers would too.
    ...(truck.kind ? [] : truck.rows).flatMap((row) => {
      const middle = round(10 + ((row.fromMm + row.toMm) / 2) * scale);
      const bar =
        row.barAtMm === null ? [] : [node('path', { d: `M${round(10 + row.barAtMm * scale)},18 V${round(24 + across)}`, class: 'bar' })];
      return [
        ...bar,
        node(
          'text',
          { x: middle, y: round(across + 40), class: 'rowno', 'text-anchor': 'middle' },
          `${row.number}${done.has(row.number) ? '✓' : ''}`,
        ),
      ];
    }),
  );
}

/** The same truck from its left side: heights, and what stands on what. */
export function drawTruckSide(truck: TruckResultOne): Node {
  const scale = (width - 20) / truck.innerLengthMm;
  const high = truck.innerHeightMm * scale;
  const sorted = [...truck.placements].sort((a, b) => b.yMm - a.yMm);
  const kept = new Set(truck.kept?.map((each) => each.piece));
  return node(
    'svg',
    {
      viewBox: `0 0 ${width} ${round(high + 40)}`,
      class: 'draw',
      role: 'img',
      'aria-label': `${spaceName(truck)} from the side, nose at the left`,
    },
    node('rect', { x: 10, y: 10, width: width - 20, height: round(high), class: 'truck' }),
    node('path', { d: `M${width - 10},${round(10 + high - truck.doorHeightMm * scale)} h-14`, class: 'bar' }),
    ...sorted.map((each) => {
      const [x, y, w, h] = [
        10 + each.xMm * scale,
        10 + high - (each.zMm + each.heightMm) * scale,
        each.alongMm * scale,
        each.heightMm * scale,
      ].map(round) as [number, number, number, number];
      return node('rect', { x: x + 1, y, width: Math.max(1, w - 2), height: h, class: pieceClass(each, kept) });
    }),
    node('text', { x: 12, y: round(high + 30), class: 'sub' }, 'nose'),
    node('text', { x: width - 12, y: round(high + 30), class: 'sub', 'text-anchor': 'end' }, 'door'),
  );
}

function pieceClass(each: Placement, kept: ReadonlySet<string>): string {
  return `piece${each.tag === null ? '' : ' wrong'}${kept.has(each.id) ? ' kept' : ''}`;
}

/** A sheet is 186 mm wide, and a letter of the id on it at least 12 point high: so many units of the drawing. */
const idSize = Math.ceil((12 * (25.4 / 72) * width) / 186);
const idLetter = idSize * 0.62;

/** The id where it fits, along or upright; left out where it does not, the table has it. */
function label(text: string, x: number, y: number, w: number, h: number): Node[] {
  const long = text.length * idLetter + 3;
  const isAlong = w >= long && h >= idSize;
  if (!isAlong && !(h >= long && w >= idSize)) return [];
  const [middleX, middleY, down] = [round(x + w / 2), round(y + h / 2), round(idSize * 0.35)];
  return [
    node(
      'text',
      {
        ...{ x: middleX, y: round(middleY + down), class: 'mono id', 'text-anchor': 'middle' },
        ...(isAlong ? {} : { transform: `rotate(-90 ${middleX} ${middleY})` }),
      },
      text,
    ),
  ];
}
