import type { Piece, Truck, TruckCaseData } from './truck-case.js';

export const headroomOf = (truck: Truck): number => Math.min(truck.innerHeightMm, truck.doorHeightMm ?? Infinity);

export interface Way {
  readonly along: number;
  readonly across: number;
}

/** The turns in which a piece lies inside the largest of the trucks. */
export function waysIn(piece: Piece, lengthMm: number, widthMm: number): Way[] {
  const ways = [{ along: piece.lengthMm, across: piece.widthMm }];
  if (piece.mayTurn && piece.lengthMm !== piece.widthMm) ways.push({ along: piece.widthMm, across: piece.lengthMm });
  return ways.filter((each) => each.along <= lengthMm && each.across <= widthMm);
}

/** Length of floor, millimetres, by the share of the width: what a base counts to a search where all of its like could ride on top and the proven prices ask nothing for it. */
export const shareOfFloorMm = (ways: readonly Way[], widthMm: number): number =>
  ways.length === 0 ? 0 : ways.reduce((least, { along, across }) => Math.min(least, (along * across) / widthMm), Infinity);

/** More freight than this is not tried piece by piece, and is dealt and set in rows by shares of the floor where the proven prices ask nothing. */
export const isLarge = ({ pieces }: Pick<TruckCaseData, 'pieces'>): boolean => pieces.length > 300;

/** The share of the floor of a piece in a tower of its like, in the longest, widest and highest of the trucks; nothing where the freight is not large. */
export function sharesInTowers(problem: Pick<TruckCaseData, 'trucks' | 'pieces'>): (piece: Piece) => number {
  if (!isLarge(problem)) return () => 0;
  const { trucks } = problem;
  const [lengthMm, widthMm] = [Math.max(...trucks.map((each) => each.innerLengthMm)), Math.max(...trucks.map((each) => each.innerWidthMm))];
  const headroomMm = Math.max(...trucks.map(headroomOf));
  return (piece) => {
    const high = Math.floor(headroomMm / piece.heightMm);
    const borne = piece.maxOnTopKg === undefined || piece.massKg === 0 ? Infinity : 1 + Math.floor(piece.maxOnTopKg / piece.massKg);
    return shareOfFloorMm(waysIn(piece, lengthMm, widthMm), widthMm) / (piece.floorOnly ? 1 : Math.max(1, Math.min(high, borne)));
  };
}

/** Does the piece go into the truck by itself: through the door, under the roof, between the walls, inside the payload? */
export function fits(piece: Piece, truck: Truck): boolean {
  const inside = (along: number, across: number) => along <= truck.innerLengthMm && across <= truck.innerWidthMm;
  return (
    piece.heightMm <= headroomOf(truck) &&
    piece.massKg <= (truck.payloadKg ?? Infinity) &&
    (inside(piece.lengthMm, piece.widthMm) || (piece.mayTurn && inside(piece.widthMm, piece.lengthMm)))
  );
}

export const couldRide = (piece: Piece, trucks: readonly Truck[]): boolean => trucks.some((truck) => fits(piece, truck));
