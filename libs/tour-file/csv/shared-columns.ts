import type { ItemKind } from '../shapes/index.js';
import { csvColumns } from './csv-columns.js';

/** What each thing has for itself is not written over many of them. */
const ownColumns = ['serial', 'model', 'asset identifier', 'count', 'uses', 'boxes, top first'];

/** Columns that all of these kinds have and that may be the same for many. */
export const sharedColumns = (kinds: Iterable<ItemKind>): string[] => {
  const lists = [...kinds].map((kind) => csvColumns(kind).map(({ heading }) => heading));
  return (lists[0] ?? []).filter((heading) => !ownColumns.includes(heading) && lists.every((each) => each.includes(heading)));
};
