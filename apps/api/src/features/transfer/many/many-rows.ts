import type { BadInput } from '#kernel';
import { type Item, type ItemKind, csvColumns, itemKinds, sharedColumns } from '#tour-file';

/** A column, and what is to stand in it. */
export interface Cell {
  readonly column: string;
  readonly value: string;
}

/** What is wrong with the cells before any item is looked at. */
export function cellFaults(cells: readonly Cell[], kinds: Iterable<ItemKind>): BadInput[] {
  const shared = sharedColumns(kinds);
  const seen = new Set<string>();
  if (cells.length === 0) return [{ field: 'cells', value: 'none', wanted: `one or more of: ${shared.join(', ')}` }];
  return cells.flatMap(({ column }) => {
    const isTwice = seen.has(column);
    seen.add(column);
    if (!isTwice && shared.includes(column)) return [];
    return [{ field: 'column', value: column.slice(0, 80), wanted: isTwice ? 'each column once' : `one of: ${shared.join(', ')}` }];
  });
}

/** The items of each kind as rows of its CSV, with the cells written over. */
export function rowsByKind(items: readonly Item[], cells: readonly Cell[]): { readonly kind: ItemKind; readonly rows: string[][] }[] {
  const given = new Map(cells.map(({ column, value }) => [column, value.trim()]));
  return itemKinds.flatMap((kind) => {
    const ofKind = items.filter((item) => item.kind === kind);
    const columns = csvColumns(kind);
    const rows = ofKind.map((item) => columns.map(({ heading, cell }) => given.get(heading) ?? cell(item)));
    return ofKind.length === 0 ? [] : [{ kind, rows: [columns.map(({ heading }) => heading), ...rows] }];
  });
}
