import type { Piece, Truck } from './truck-case.js';

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
