import type { KeptPlacement, Piece, Truck } from '../case/index.js';
import type { Placed } from './load-space.js';

/** A piece where an answer puts it. */
export function asPlaced(piece: Piece, { xMm, yMm, zMm, turned }: Omit<KeptPlacement, 'truck'>): Placed {
  const [along, across] = turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
  return { piece, x: xMm, y: yMm, z: zMm, along, across, high: piece.heightMm, turned };
}

/** Kept pieces of one truck as placed, lowest first. */
export function keptIn(truck: Truck, pieces: ReadonlyMap<string, Piece>, kept: readonly KeptPlacement[]): Placed[] {
  return kept
    .filter((each) => each.truck === truck.id)
    .map((each) => asPlaced(pieces.get(each.id)!, each))
    .sort((a, b) => a.z - b.z || a.x - b.x || a.y - b.y);
}

const overlaps = (a: number, lengthA: number, b: number, lengthB: number): boolean => a < b + lengthB && b < a + lengthA;

/** Is b between a and the door, in its lane? */
const isBehind = (b: Placed, a: Placed): boolean =>
  b.x >= a.x + a.along && overlaps(a.y, a.across, b.y, b.across) && overlaps(a.z, a.high, b.z, b.high);

/** Could both stand like this: apart, and neither in the way of one that comes off earlier? `fixed` may be loaded already. */
export function getOn(each: Placed, fixed: Placed, waived: ReadonlySet<string>, isLoaded: boolean): boolean {
  const lane = overlaps(each.y, each.across, fixed.y, fixed.across) && overlaps(each.z, each.high, fixed.z, fixed.high);
  if (!lane) return true;
  if (overlaps(each.x, each.along, fixed.x, fixed.along)) return false;
  const fixedIsBehind = fixed.x >= each.x + each.along;
  if (fixedIsBehind && isLoaded) return false;
  if (waived.has(each.piece.id) || waived.has(fixed.piece.id)) return true;
  return fixedIsBehind ? each.piece.firstOff >= fixed.piece.firstOff : fixed.piece.firstOff >= each.piece.firstOff;
}

/** An order in which the load can go in: what is loaded first, then from the nose, nothing before what it stands on; undefined where there is none. */
export function loadingOrderOf(placed: readonly Placed[], loaded: ReadonlySet<string>): readonly Placed[] | undefined {
  const sorted = [...placed].sort(
    (a, b) => Number(loaded.has(b.piece.id)) - Number(loaded.has(a.piece.id)) || a.x - b.x || a.z - b.z || a.y - b.y,
  );
  const order: Placed[] = [];
  const waiting = new Map(sorted.map((each) => [each, sorted.filter((other) => other !== each && mustPrecede(other, each, loaded))]));
  const inside = new Set<Placed>();
  while (order.length < sorted.length) {
    const next = sorted.find((each) => !inside.has(each) && waiting.get(each)!.every((other) => inside.has(other)));
    if (!next) return undefined;
    order.push(next);
    inside.add(next);
  }
  return order;
}

function mustPrecede(first: Placed, then: Placed, loaded: ReadonlySet<string>): boolean {
  if (loaded.has(first.piece.id) && !loaded.has(then.piece.id)) return true;
  if (isBehind(then, first)) return true;
  return (
    first.z + first.high === then.z &&
    overlaps(first.x, first.along, then.x, then.along) &&
    overlaps(first.y, first.across, then.y, then.across)
  );
}
