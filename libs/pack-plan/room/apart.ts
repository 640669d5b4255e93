/** A place in space in millimetres: x to the audience, y to the left, z above the floor that the carts roll on. */
export type Place = readonly [x: number, y: number, z: number];

/** A convex body between two like sides: corners in order around one side, and how far the other side lies from it. */
export interface Prism {
  readonly side: readonly Place[];
  readonly through: Place;
}

/**
 * How far two convex bodies are apart; negative where they stand in one another: by so much one of them would have to move. Apart: the least distance of a
 * corner from a face and of an edge from an edge. In one another: the least overlap along the normals of faces and across pairs of edges (separating axes).
 */
export function apartMm(a: Prism, b: Prism): number {
  const [first, second] = [shapeOf(a), shapeOf(b)];
  const gap = Math.max(...axesOf(first, second).map((axis) => gapAlong(axis, first.corners, second.corners)));
  if (gap < 0) return gap;
  return Math.min(
    ...first.edges.flatMap((p) => second.edges.map((q) => edgesApart(p, q))),
    ...first.corners.flatMap((corner) => second.faces.map((face) => cornerFromFace(corner, face))),
    ...second.corners.flatMap((corner) => first.faces.map((face) => cornerFromFace(corner, face))),
  );
}

/** At most how far apart any two bodies can be that a ball holds each: what need not be looked at closely. */
export function ballOf(prism: Prism): { readonly centre: Place; readonly radiusMm: number } {
  const { corners } = shapeOf(prism);
  const centre = scaled(corners.reduce(plus), 1 / corners.length);
  return { centre, radiusMm: Math.max(...corners.map((each) => long(minus(each, centre)))) };
}

export const long = (p: Place): number => Math.hypot(...p);
export const minus = (p: Place, q: Place): Place => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const plus = (p: Place, q: Place): Place => [p[0] + q[0], p[1] + q[1], p[2] + q[2]];
const scaled = (p: Place, by: number): Place => [p[0] * by, p[1] * by, p[2] * by];
const dot = (p: Place, q: Place): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (p: Place, q: Place): Place => [p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]];

type Edge = readonly [from: Place, to: Place];
interface Shape {
  readonly corners: readonly Place[];
  readonly edges: readonly Edge[];
  readonly faces: readonly (readonly Place[])[];
}

function shapeOf({ side, through }: Prism): Shape {
  const other = side.map((each) => plus(each, through));
  const next = (index: number) => (index + 1) % side.length;
  return {
    corners: [...side, ...other],
    edges: side.flatMap((each, index): Edge[] => [
      [each, side[next(index)]!],
      [other[index]!, other[next(index)]!],
      [each, other[index]!],
    ]),
    faces: [side, other, ...side.map((each, index) => [each, side[next(index)]!, other[next(index)]!, other[index]!])],
  };
}

/** Normals of the faces of both, and what stands square on an edge of each. */
function axesOf(a: Shape, b: Shape): readonly Place[] {
  const normals = [...a.faces, ...b.faces].map(normalOf);
  const across = a.edges.flatMap((p) => b.edges.map((q) => cross(minus(p[1], p[0]), minus(q[1], q[0]))));
  return [...normals, ...across].flatMap((axis) => {
    const length = long(axis);
    return length > 1e-6 ? [scaled(axis, 1 / length)] : [];
  });
}

const normalOf = (face: readonly Place[]): Place => cross(minus(face[1]!, face[0]!), minus(face[2]!, face[1]!));

function gapAlong(axis: Place, a: readonly Place[], b: readonly Place[]): number {
  const [p, q] = [a.map((each) => dot(axis, each)), b.map((each) => dot(axis, each))];
  return Math.max(Math.min(...q) - Math.max(...p), Math.min(...p) - Math.max(...q));
}

/** Infinity where the corner does not stand over the face: an edge is nearer then. */
function cornerFromFace(corner: Place, face: readonly Place[]): number {
  const normal = normalOf(face);
  const inside = face.every((from, index) => {
    const along = minus(face[(index + 1) % face.length]!, from);
    return dot(cross(along, minus(corner, from)), normal) >= 0;
  });
  return inside ? Math.abs(dot(minus(corner, face[0]!), normal)) / long(normal) : Infinity;
}

/** Least distance of two edges: both places held within their edge. */
function edgesApart([a, b]: Edge, [c, d]: Edge): number {
  const [u, v, w] = [minus(b, a), minus(d, c), minus(a, c)];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const square = uu * vv - uv * uv;
  const within = (share: number) => Math.min(1, Math.max(0, share));
  // Along parallel edges any place does to begin with.
  let s = square > 1e-9 * uu * vv ? within((uv * vw - vv * uw) / square) : 0;
  const t = within((uv * s + vw) / vv);
  s = within((uv * t - uw) / uu);
  return long(minus(plus(a, scaled(u, s)), plus(c, scaled(v, t))));
}
