import type { Placement, TruckResultOne } from '#pack-plan';
import { round } from '../hang/index.js';
import { type Node, node } from '../tree/index.js';

const width = 440;
/** How a millimetre along, across and up goes to the right and down: seen from the door's side, from above. */
const rightOf = [0.94, -0.6, 0] as const;
const downOf = [0.1, 0.5, -0.9] as const;

type Corner = readonly [number, number, number];
interface Body {
  readonly piece: Pick<Placement, 'id'>;
  readonly low: Corner;
  readonly high: Corner;
}

/**
 * A step of stowing as it looks when it is done: what stands already is pale, what goes in now is dark and named; where it stands
 * behind something, dashed. The wall toward the looker is left away.
 */
export function drawStowingStep(truck: TruckResultOne, step: number): Node {
  const row = truck.rows[step]!;
  const now = new Set(row.pieces);
  const before = new Set(truck.rows.slice(0, step).flatMap((each) => each.pieces));
  const size: Corner = [truck.innerLengthMm, truck.innerWidthMm, truck.innerHeightMm];
  const view = viewOf(size);
  const bodies = farFirst(truck.placements.filter((each) => now.has(each.id) || before.has(each.id)).map(bodyOf));
  return node(
    'svg',
    {
      viewBox: `0 0 ${width} ${view.height}`,
      class: 'draw',
      role: 'img',
      'aria-label': `Step ${row.number} of ${truck.rows.length} of ${truck.id}: ${row.pieces.join(', ')}`,
    },
    ...inside(size, view),
    ...bodies.flatMap((body) => drawBody(body, now.has(body.piece.id) ? 'new' : 'piece', view)),
    ...bodies.flatMap((body, index) => (now.has(body.piece.id) ? nameOf(body, isHidden(body, bodies.slice(index + 1), view), view) : [])),
    node('text', { x: 4, y: 14, class: 'rowno' }, `${row.number}`),
  );
}

interface View {
  readonly at: (corner: Corner) => readonly [number, number];
  readonly height: number;
}

function viewOf(size: Corner): View {
  const corners = [0, 1].flatMap((x) => [0, 1].flatMap((y) => [0, 1].map((z): Corner => [x * size[0], y * size[1], z * size[2]])));
  const flat = (corner: Corner, by: Corner) => corner[0] * by[0] + corner[1] * by[1] + corner[2] * by[2];
  const rights = corners.map((each) => flat(each, rightOf));
  const downs = corners.map((each) => flat(each, downOf));
  const [left, top] = [Math.min(...rights), Math.min(...downs)];
  const scale = (width - 24) / (Math.max(...rights) - left);
  return {
    at: (corner) => [round(12 + (flat(corner, rightOf) - left) * scale), round(20 + (flat(corner, downOf) - top) * scale)],
    height: round(32 + (Math.max(...downs) - top) * scale),
  };
}

const bodyOf = (piece: Placement): Body => ({
  piece,
  low: [piece.xMm, piece.yMm, piece.zMm],
  high: [piece.xMm + piece.alongMm, piece.yMm + piece.acrossMm, piece.zMm + piece.heightMm],
});

const axes = [0, 1, 2] as const;
const isBehind = (a: Body, b: Body): boolean =>
  axes.some((axis) => a.high[axis] <= b.low[axis]) && !axes.some((axis) => b.high[axis] <= a.low[axis]);

/** What can be hidden by another is drawn before it. */
function farFirst(bodies: readonly Body[]): readonly Body[] {
  const left = [...bodies];
  const drawn: Body[] = [];
  while (left.length > 0) {
    const next = left.findIndex((each) => left.every((other) => other === each || !isBehind(other, each)));
    drawn.push(...left.splice(Math.max(0, next), 1));
  }
  return drawn;
}

const face = (corners: readonly Corner[], name: string, { at }: View): Node =>
  node('path', { d: `M${corners.map((each) => at(each).join(',')).join(' L')} Z`, class: name });

/** Floor, far wall and nose. */
function inside([x, y, z]: Corner, view: View): Node[] {
  return [
    face(
      [
        [0, 0, 0],
        [x, 0, 0],
        [x, y, 0],
        [0, y, 0],
      ],
      'truck',
      view,
    ),
    face(
      [
        [0, 0, 0],
        [x, 0, 0],
        [x, 0, z],
        [0, 0, z],
      ],
      'truck',
      view,
    ),
    face(
      [
        [0, 0, 0],
        [0, y, 0],
        [0, y, z],
        [0, 0, z],
      ],
      'truck',
      view,
    ),
  ];
}

function drawBody({ low: [x0, y0, z0], high: [x1, y1, z1] }: Body, name: string, view: View): Node[] {
  return [
    face(
      [
        [x0, y0, z1],
        [x1, y0, z1],
        [x1, y1, z1],
        [x0, y1, z1],
      ],
      name,
      view,
    ),
    face(
      [
        [x0, y1, z0],
        [x1, y1, z0],
        [x1, y1, z1],
        [x0, y1, z1],
      ],
      name,
      view,
    ),
    face(
      [
        [x1, y0, z0],
        [x1, y1, z0],
        [x1, y1, z1],
        [x1, y0, z1],
      ],
      name,
      view,
    ),
  ];
}

/** Its name on the side toward the looker; of one that cannot be seen the outline, and its name on its top. */
function nameOf({ piece: { id }, low, high }: Body, isBehindSome: boolean, view: View): Node[] {
  const from = view.at(isBehindSome ? [low[0], low[1], high[2]] : [low[0], high[1], high[2]]);
  const to = view.at(isBehindSome ? [high[0], high[1], high[2]] : [high[0], high[1], low[2]]);
  const [x, y] = [round((from[0] + to[0]) / 2), round((from[1] + to[1]) / 2 + 4)];
  return [
    ...(isBehindSome ? drawBody({ piece: { id }, low, high }, 'ghost', view) : []),
    node('text', { x, y, class: 'mono tiny name', 'text-anchor': 'middle' }, id),
  ];
}

/** More than a fifth of it is behind what is drawn after it. */
function isHidden(body: Body, nearer: readonly Body[], view: View): boolean {
  const own = frameOf(body, view);
  const area = (own.right - own.left) * (own.bottom - own.top);
  return nearer.some((other) => {
    const frame = frameOf(other, view);
    const wide = Math.min(own.right, frame.right) - Math.max(own.left, frame.left);
    const high = Math.min(own.bottom, frame.bottom) - Math.max(own.top, frame.top);
    return wide > 0 && high > 0 && wide * high > area / 5;
  });
}

/** Of the side toward the looker. */
function frameOf({ low, high }: Body, { at }: View) {
  const [left, top] = at([low[0], high[1], high[2]]);
  const [right, bottom] = at([high[0], high[1], low[2]]);
  return { left, top, right, bottom };
}
