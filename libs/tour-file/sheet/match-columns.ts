/** A column that we know: its heading, and other words that people write above such a column. */
export interface Column {
  readonly heading: string;
  readonly also?: readonly string[];
}

/** For each column of the sheet the heading of ours that it is, or null: it is not read. */
export type Match = readonly (string | null)[];

/** Case, accents, and what stands between words say nothing. */
export const plainName = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '');

/** What is headed as ours, then what is headed by another word for it; each of ours at most once. What is left is for a person to match. */
export function matchColumns(headings: readonly string[], columns: readonly Column[]): Match {
  const taken = new Set<string>();
  const match: (string | null)[] = headings.map(() => null);
  const take = (namesOf: (column: Column) => readonly string[]): void =>
    headings.forEach((heading, at) => {
      if (match[at] !== null || plainName(heading) === '') return;
      const found = columns.find(
        (each) => !taken.has(each.heading) && namesOf(each).some((name) => plainName(name) === plainName(heading)),
      );
      if (!found) return;
      match[at] = found.heading;
      taken.add(found.heading);
    });
  take((each) => [each.heading]);
  take((each) => each.also ?? []);
  return match;
}

/** Where the heading of a sheet is: of its first rows the one that has most headings of ours; titles and dates may stand above it. */
export function headingRowOf(records: readonly (readonly string[])[], columns: readonly Column[]): number {
  const first = Math.max(
    0,
    records.findIndex((record) => record.some((cell) => cell.trim() !== '')),
  );
  const known = (at: number): number => matchColumns(records[at] ?? [], columns).filter((each) => each !== null).length;
  return records.slice(0, rowsLookedAt).reduce((best, _, at) => (known(at) > known(best) ? at : best), first);
}

const rowsLookedAt = 15;
