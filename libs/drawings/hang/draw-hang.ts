import type { HangResult, Point } from '#pack-plan';
import { type Node, type Units, formatForce, formatMass, node } from '../tree/index.js';
import { drawTrim, trimText } from './draw-trim.js';

const width = 460;
const margin = 96;
const head = 92;

/** What a drawing of a hang shows; the editor draws a hang before there is a plan. */
export type DrawnHang = Pick<HangResult, 'hang' | 'name' | 'trimHeightMm' | 'massKg' | 'centreOfGravity' | 'outline'> & {
  readonly picks: readonly Pick<HangResult['picks'][number], 'hole' | 'place' | 'hookLoadKg' | 'hoistSerial' | 'reactionN'>[];
  readonly boxes: readonly Pick<HangResult['boxes'][number], 'position' | 'splayDeg' | 'cart'>[];
  readonly unshared?: HangResult['unshared'];
  readonly pullBack?: HangResult['pullBack'];
  readonly room?: Pick<NonNullable<HangResult['room']>, 'trimTo' | 'markZMm' | 'lowestHeightMm' | 'deckHeightMm'> | null;
};

/** A hang in side view, to scale: grid with holes, picks with their loads, boxes as true trapezoids at their angles, centre of gravity, cart braces. */
export function drawHang(hang: DrawnHang, units: Units = 'metric', wrong: ReadonlySet<number> = new Set()): Node {
  const points = [...hang.outline.grid, ...hang.outline.boxes.flatMap((box) => box.corners)];
  const [left, right] = [Math.min(...points.map((p) => p.xMm)), Math.max(...points.map((p) => p.xMm))];
  const [low, high] = [Math.min(...points.map((p) => p.zMm)), Math.max(...points.map((p) => p.zMm))];
  const scale = Math.min((width - 2 * margin - 40) / Math.max(1, right - left), 640 / Math.max(1, high - low));
  // Forward (to the audience) is to the right.
  const at = (p: Point): [number, number] => [margin + 20 + (p.xMm - left) * scale, head + (high - p.zMm) * scale];
  const height = head + (high - low) * scale + 40;
  return node(
    'svg',
    {
      viewBox: `0 0 ${width} ${round(height)}`,
      class: 'draw',
      role: 'img',
      'aria-label': `Side view of ${hang.name}: ${hang.boxes.length} boxes, ${hang.picks.length === 1 ? 'one pick' : 'two picks'}`,
    },
    hatch(),
    node('text', { x: width - 4, y: 12, class: 'sub', 'text-anchor': 'end' }, 'to the audience →'),
    ...hang.picks.flatMap((pick) => drawPick(hang, pick, at, units)),
    ...(hang.unshared?.hoists ?? []).flatMap(({ hole }) => drawUnshared(hang, hole, at)),
    node('polygon', { points: polygon(hang.outline.grid, at), class: 'steel' }),
    ...hang.outline.holes.map(({ at: hole }) => node('circle', { cx: round(at(hole)[0]), cy: round(at(hole)[1]), r: 1.8, class: 'hole' })),
    ...(hang.outline.adapters ?? []).map(({ corners }) => node('polygon', { points: polygon(corners, at), class: 'steel' })),
    ...hang.outline.boxes.flatMap((box, index) => drawBox(box, hang.boxes[index]?.splayDeg ?? 0, at, wrong.has(box.position), scale)),
    ...drawBraces(hang, at),
    ...drawCentre(hang, at, units),
    ...drawPullBack(hang, at, units),
    ...drawTrim(hang, width, (zMm) => round(at({ xMm: left, zMm })[1]), units),
    node('text', { x: 4, y: round(height) - 8, class: 'sub' }, trimText(hang, units)),
  );
}

export const hatch = (): Node =>
  node(
    'defs',
    {},
    node(
      'pattern',
      { id: 'hatch', width: 7, height: 7, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
      node('line', { x1: 0, y1: 0, x2: 0, y2: 7, class: 'hatchline' }),
    ),
  );

export const round = (value: number): number => Math.round(value * 10) / 10;
const polygon = (points: readonly Point[], at: (p: Point) => [number, number]): string =>
  points.map((p) => at(p).map(round).join(',')).join(' ');

function drawPick(hang: DrawnHang, pick: DrawnHang['picks'][number], at: (p: Point) => [number, number], units: Units): Node[] {
  const hole = hang.outline.holes.find((each) => each.hole === pick.hole);
  if (!hole) return [];
  const [x, y] = at(hole.at).map(round) as [number, number];
  const front = pick.place !== 'rear';
  const side = front ? { x: x + 12, anchor: 'start' } : { x: x - 12, anchor: 'end' };
  return [
    node('line', { x1: x, y1: 22, x2: x, y2: y, class: 'chain' }),
    node('path', { d: `M${x - 6},28 h12 v22 h-12 z`, class: 'hoist' }),
    node('path', { d: `M${x},${y - 4} v-26 m-4,7 l4,-7 l4,7`, class: 'brace' }),
    node('text', { x: side.x, y: 38, class: 'num', 'text-anchor': side.anchor }, formatMass(pick.hookLoadKg, units)),
    node('text', { x: side.x, y: 53, class: 'sub', 'text-anchor': side.anchor }, `at the hook, hole ${pick.hole}`),
    node('text', { x: side.x, y: 81, class: 'sub', 'text-anchor': side.anchor }, `↑ ${formatForce(pick.reactionN, units)}`),
    ...(pick.hoistSerial ? [node('text', { x: side.x, y: 67, class: 'mono small', 'text-anchor': side.anchor }, pick.hoistSerial)] : []),
  ];
}

/** More than two points in a line: chains without figures. */
function drawUnshared(hang: DrawnHang, name: string, at: (p: Point) => [number, number]): Node[] {
  const hole = hang.outline.holes.find((each) => each.hole === name);
  if (!hole) return [];
  const [x, y] = at(hole.at).map(round) as [number, number];
  return [
    node('line', { x1: x, y1: 22, x2: x, y2: y, class: 'chain' }),
    node('path', { d: `M${x - 6},28 h12 v22 h-12 z`, class: 'hoist' }),
    node('text', { x: x + 9, y: 66, class: 'sub' }, 'measure'),
  ];
}

function drawBox(
  box: HangResult['outline']['boxes'][number],
  splayDeg: number,
  at: (p: Point) => [number, number],
  wrong: boolean,
  scale: number,
): Node[] {
  const centre = box.corners.reduce((sum, p) => ({ xMm: sum.xMm + p.xMm / 4, zMm: sum.zMm + p.zMm / 4 }), { xMm: 0, zMm: 0 });
  const [cx, cy] = at(centre).map(round) as [number, number];
  const [px, py] = at(box.frontPivot).map(round) as [number, number];
  const tall = Math.hypot(box.corners[0]!.xMm - box.corners[1]!.xMm, box.corners[0]!.zMm - box.corners[1]!.zMm) * scale;
  return [
    node('polygon', { points: polygon(box.corners, at), class: wrong ? 'box wrong' : 'box', 'data-box': box.position }),
    node('text', { x: cx, y: cy + 5, class: tall < 16 ? 'pos small' : 'pos', 'text-anchor': 'middle' }, String(box.position)),
    node('text', { x: px + 10, y: py + 5, class: tall < 16 ? 'ang small' : 'ang' }, `${splayDeg}°`),
  ];
}

/** One bracket for each cart load, on the rear side. */
function drawBraces(hang: DrawnHang, at: (p: Point) => [number, number]): Node[] {
  const groups: { cart: string | null; positions: number[] }[] = [];
  for (const box of hang.boxes) {
    const last = groups.at(-1);
    if (last && last.cart === box.cart && box.cart !== null) last.positions.push(box.position);
    else groups.push({ cart: box.cart, positions: [box.position] });
  }
  return groups
    .filter((group) => group.cart !== null)
    .flatMap((group, index) => {
      const corners = group.positions.flatMap((position) => hang.outline.boxes[position - 1]!.corners.map(at));
      const x = round(Math.max(48, Math.min(...corners.map(([cx]) => cx)) - 10));
      const [top, bottom] = [Math.min(...corners.map(([, y]) => y)) + 4, Math.max(...corners.map(([, y]) => y)) - 4].map(round) as [
        number,
        number,
      ];
      const middle = round((top + bottom) / 2);
      return [
        node('path', { d: `M${x + 6},${top} H${x} V${bottom} H${x + 6}`, class: 'brace' }),
        node('text', { x: x - 6, y: middle, class: 'cart', 'text-anchor': 'end' }, `${index + 1}`),
        node('text', { x: x - 6, y: middle + 14, class: 'mono small', 'text-anchor': 'end' }, group.cart),
      ];
    });
}

/** The line of a pull-back, from its box toward the anchor, with what it pulls. */
function drawPullBack(hang: DrawnHang, at: (p: Point) => [number, number], units: Units): Node[] {
  const figures = hang.pullBack?.figures;
  const box = hang.outline.boxes.find((each) => each.position === hang.pullBack?.position);
  if (!figures || !box) return [];
  const [x, y] = at(box.corners[2]!).map(round) as [number, number];
  const size = Math.hypot(figures.anchorForwardN, figures.anchorUpN) || 1;
  // The anchor is pulled toward the hang, so it lies the other way.
  const [dx, dy] = [(-figures.anchorForwardN / size) * 40, (figures.anchorUpN / size) * 40];
  return [
    node('line', { x1: x, y1: y, x2: round(x + dx), y2: round(y + dy), class: 'bar' }),
    node(
      'text',
      { x: round(x + dx), y: round(y + dy + 12), class: 'sub', 'text-anchor': dx < 0 ? 'end' : 'start' },
      `pull-back ${formatForce(figures.tensionN, units)}`,
    ),
  ];
}

function drawCentre(hang: DrawnHang, at: (p: Point) => [number, number], units: Units): Node[] {
  const [x, y] = at(hang.centreOfGravity).map(round) as [number, number];
  return [
    node('path', { d: `M${x},${y + 9} v26 m-4,-7 l4,7 l4,-7`, class: 'brace' }),
    node('text', { x: width - 4, y: y + 4, class: 'sub', 'text-anchor': 'end' }, `↓ ${formatForce(hang.massKg * 9.80665, units)}`),
    node('circle', { cx: x, cy: y, r: 6, class: 'cg' }),
    node('path', { d: `M${x - 9},${y} H${x + 9} M${x},${y - 9} V${y + 9}`, class: 'brace' }),
  ];
}
