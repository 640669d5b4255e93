import type { Piece, Truck } from './truck-case.js';
import { couldRide, headroomOf } from './fits.js';

/** Why a piece stays behind. */
export type LeftOverCode =
  /** Higher than door and roof of every truck. */
  | 'too-high'
  /** Larger or heavier than any truck takes. */
  | 'too-large'
  /** Beside the others, inside the limits, no place was found. */
  | 'no-place'
  /** In rows beside what is kept, inside the limits, no place was found. */
  | 'no-place-beside-kept'
  /** Every truck is over an axle limit before anything is in it. */
  | 'trucks-over-empty'
  /** Nothing is planned: what is kept breaks a rule. */
  | 'kept-breaks-rule';

export interface LeftOver {
  readonly id: string;
  readonly code: LeftOverCode;
  readonly numbers: Readonly<Record<string, number>>;
  /** The code and its numbers as words. */
  readonly reason: string;
}

/** The one place where a reason becomes words. */
const words: Record<LeftOverCode, (numbers: Readonly<Record<string, number>>) => string> = {
  'too-high': ({ heightMm, mostMm }) => `higher than any truck lets in: ${heightMm} mm, and ${mostMm} mm is the most at door and roof`,
  'too-large': ({ lengthMm, widthMm, heightMm, massKg }) =>
    `larger or heavier than any truck takes: ${lengthMm} x ${widthMm} x ${heightMm} mm, ${massKg} kg`,
  'no-place': () => 'no place was found for it beside the others inside the limits',
  'no-place-beside-kept': () => 'no place was found for it in rows beside what is kept, inside the limits',
  'trucks-over-empty': () => 'every truck is over an axle limit when it is empty',
  'kept-breaks-rule': () => 'nothing is planned: what is kept in its place breaks a rule',
};

export function leftOver({ id }: Piece, code: LeftOverCode, numbers: LeftOver['numbers'] = {}): LeftOver {
  return { id, code, numbers, reason: words[code](numbers) };
}

/** A piece that goes into none of the trucks by itself, with what is in its way; undefined for one that goes into some. */
export function cannotRide(piece: Piece, trucks: readonly Truck[]): LeftOver | undefined {
  if (couldRide(piece, trucks)) return undefined;
  const { lengthMm, widthMm, heightMm, massKg } = piece;
  const mostMm = trucks.reduce((most, each) => Math.max(most, headroomOf(each)), 0);
  return heightMm > mostMm
    ? leftOver(piece, 'too-high', { heightMm, mostMm })
    : leftOver(piece, 'too-large', { lengthMm, widthMm, heightMm, massKg });
}
