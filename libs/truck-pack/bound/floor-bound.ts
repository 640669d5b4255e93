import { type Piece, type TruckCaseData, headroomOf, waysIn } from '../case/index.js';
import { type FloorDemand, type WidthPrices, widthPrices } from './width-prices.js';

/** What the pieces use up of the floor in one direction, proven; millimetres of the lines along it. */
export interface FloorUse {
  readonly usedMm: number;
  readonly prices: WidthPrices;
}

/**
 * Floor that the pieces need, whatever stands on what: pieces that must stand on the floor use it up; of the others only so many can stand on tops as the tops have area and
 * may bear mass for, each counted at its best share. `swapped` exchanges length and width: what is used up of the width.
 */
export function floorUse(
  { trucks, minSupport }: Pick<TruckCaseData, 'trucks' | 'minSupport'>,
  pieces: readonly Piece[],
  swapped = false,
): FloorUse {
  const [lengthMm, widthMm] = [Math.max(...trucks.map((each) => each.innerLengthMm)), Math.max(...trucks.map((each) => each.innerWidthMm))];
  const height = Math.max(...trucks.map(headroomOf));
  const kinds = kindsOf(pieces).map(({ piece, count }) => {
    const ways = waysIn(piece, lengthMm, widthMm);
    return { piece, count, ways: swapped ? ways.map(({ along, across }) => ({ along: across, across: along })) : ways };
  });
  const room = roomOnTop(pieces, height, minSupport);
  const rides = (piece: Piece) => !piece.floorOnly && piece.heightMm + room.lowestMm <= height && piece.massKg <= room.kg + 1e-6;
  // A share of what may ride on top, by area alone, tells the search for prices what to look at.
  const riding = kinds.filter(({ piece }) => rides(piece));
  const ridingMm2 = riding.reduce((sum, { piece, count }) => sum + count * areaOf(piece), 0);
  const upstairs = ridingMm2 === 0 ? 0 : Math.min(1, room.mm2 / ridingMm2);
  const demand = kinds.map(
    ({ piece, count, ways }): FloorDemand => ({ ways, count: rides(piece) ? count * (1 - upstairs) : count, pieces: count }),
  );
  const prices = widthPrices(swapped ? lengthMm : widthMm, demand, kinds.length > 200 ? 0 : kinds.length > 80 ? 20 : 60);
  const costs = kinds.map(({ piece, count, ways }) => ({ piece, count, cost: ways.length === 0 ? 0 : prices.lengthOf(ways) }));
  const fixed = costs.reduce((sum, { piece, count, cost }) => sum + (rides(piece) ? 0 : count * cost), 0);
  const loose = costs.filter(({ piece }) => rides(piece));
  const byArea = leastLeft(loose, room.mm2, ({ piece }) => areaOf(piece));
  const byMass = leastLeft(loose, room.kg, ({ piece }) => piece.massKg);
  return { usedMm: fixed + Math.max(byArea, byMass), prices };
}

const areaOf = (piece: Piece): number => piece.lengthMm * piece.widthMm;

function kindsOf(pieces: readonly Piece[]): { piece: Piece; count: number }[] {
  const kinds = new Map<string, { piece: Piece; count: number }>();
  for (const piece of pieces) {
    const { lengthMm, widthMm, heightMm, massKg, mayTurn, floorOnly } = piece;
    const key = `${lengthMm} ${widthMm} ${heightMm} ${massKg} ${mayTurn} ${floorOnly}`;
    const kind = kinds.get(key);
    if (kind) kind.count++;
    else kinds.set(key, { piece, count: 1 });
  }
  return [...kinds.values()];
}

/** What all tops together may hold: base area of pieces (more where less than the whole base must be supported), mass, and how low the lowest top is. */
function roomOnTop(pieces: readonly Piece[], height: number, minSupport: number): { mm2: number; kg: number; lowestMm: number } {
  const riders = pieces.filter((each) => !each.floorOnly);
  const flattest = riders.reduce((least, each) => Math.min(least, each.heightMm), Infinity);
  const lightest = riders.reduce((least, each) => Math.min(least, each.massKg), Infinity);
  // What rests on several pieces gives each only a part of its mass, so only a limit of nothing keeps a top free for certain.
  const carriers = pieces.filter(
    (each) => each.heightMm + flattest <= height && (each.maxOnTopKg === undefined || each.maxOnTopKg > 1e-6 || lightest <= 1e-6),
  );
  const mm2 = carriers.reduce((sum, each) => sum + areaOf(each), 0);
  return {
    mm2: minSupport > 0 ? mm2 / minSupport : mm2 > 0 ? Infinity : 0,
    kg: carriers.reduce((sum, each) => sum + (each.maxOnTopKg ?? Infinity) + 1e-6, 0),
    lowestMm: carriers.reduce((least, each) => Math.min(least, each.heightMm), Infinity),
  };
}

/** Least cost that stays on the floor when others, in parts, are taken off it up to a capacity. */
function leastLeft(
  kinds: readonly { piece: Piece; count: number; cost: number }[],
  capacity: number,
  size: (kind: { piece: Piece }) => number,
): number {
  let [left, room] = [0, capacity];
  const worth = (kind: { piece: Piece; cost: number }) => (size(kind) === 0 ? Infinity : kind.cost / size(kind));
  for (const kind of [...kinds].sort((a, b) => worth(b) - worth(a))) {
    const all = size(kind) * kind.count;
    const part = all === 0 ? 1 : Math.min(1, room / all);
    left += kind.cost * kind.count * (1 - part);
    room = Math.max(0, room - all);
  }
  return left;
}
