import { BadInputError } from '../../../platform/faults/fault.js';
import { readCursor } from '../../../platform/graphql/paging.js';

/** The number of a record or event after which a page begins; null: at the newest. */
export function recordNumber(after: string | null | undefined): string | null {
  const text = readCursor(after) ?? null;
  if (text !== null && !/^\d{1,18}$/.test(text))
    throw new BadInputError([{ field: 'after', value: String(after).slice(0, 80), wanted: 'a cursor of an earlier page' }]);
  return text;
}
