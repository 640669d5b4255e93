import type { NoPlace } from '#trade';
import type { Piece, Truck } from './truck-case.js';
import { couldRide, headroomOf } from './fits.js';

/** A piece that stays behind, and why. */
export type LeftOver = NoPlace & { readonly id: string };

export const leftOver = ({ id }: Piece, why: NoPlace): LeftOver => ({ id, ...why });

/** A piece that goes into none of the trucks by itself, with what is in its way; undefined for one that goes into some. */
export function cannotRide(piece: Piece, trucks: readonly Truck[]): LeftOver | undefined {
  if (couldRide(piece, trucks)) return undefined;
  const { lengthMm, widthMm, heightMm, massKg } = piece;
  const mostMm = trucks.reduce((most, each) => Math.max(most, headroomOf(each)), 0);
  return heightMm > mostMm
    ? leftOver(piece, { code: 'too-high', heightMm, mostMm })
    : leftOver(piece, { code: 'too-large', lengthMm, widthMm, heightMm, massKg });
}
