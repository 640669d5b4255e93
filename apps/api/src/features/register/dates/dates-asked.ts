import { itemKinds } from '#tour-file';
import { BadInputError } from '../../../platform/faults/fault.js';

/** Which part of the due list is wanted; nothing: all of it. */
export interface DatesAsked {
  readonly depot?: string | null;
  /** Id of a tour: what is booked for it. */
  readonly tour?: string | null;
  readonly kind?: string | null;
  /** What runs out so many days ahead; what may not be used stands before it. */
  readonly days?: number | null;
}

const mostDays = 3660;

/** @throws BadInputError for a kind that the register does not know, and for days that are none. */
export function checkDatesAsked({ kind, days }: DatesAsked): void {
  const wanted = `a whole number of days from 1 to ${mostDays}`;
  if (typeof days === 'number' && !(Number.isInteger(days) && days >= 1 && days <= mostDays))
    throw new BadInputError([{ field: 'days', value: days, wanted }]);
  if (kind && !itemKinds.some((each) => each === kind))
    throw new BadInputError([{ field: 'kind', value: kind.slice(0, 80), wanted: `one of ${itemKinds.join(', ')}` }]);
}
