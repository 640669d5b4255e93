import type { CsvFault } from '#tour-file';

/** What a CSV file changes, or would change; with faults nothing. */
export interface CsvImport {
  readonly rows: number;
  readonly added: readonly string[];
  readonly changed: readonly { readonly id: string; readonly what: string }[];
  readonly unchanged: number;
  /** Of examinations: those among the new ones that failed; they count at once. */
  readonly failed?: readonly string[];
  readonly faults: readonly CsvFault[];
  /** What of it waits for the safety officer, in words; the value of before holds until then. */
  readonly waits: readonly { readonly id: string; readonly sentence: string }[];
}

/** Faults, and nothing imported. */
export const nothingImported = (rows: number, faults: readonly CsvFault[]): CsvImport => ({
  rows,
  added: [],
  changed: [],
  unchanged: 0,
  faults,
  waits: [],
});

/** Faults in the order of the rows. */
export const byRow = (faults: readonly CsvFault[]): readonly CsvFault[] => [...faults].sort((a, b) => a.row - b.row);

/** "mass kg 62 to 63, maker nothing to Saltmarsh Works". */
export function changedCells<T>(
  columns: readonly { readonly heading: string }[],
  cell: (row: T, column: number) => string,
  before: T,
  after: T,
): string {
  return columns
    .map(({ heading }, index) => ({ heading, was: cell(before, index), is: cell(after, index) }))
    .filter(({ was, is }) => was !== is)
    .map(({ heading, was, is }) => `${heading} ${was || 'nothing'} to ${is || 'nothing'}`)
    .join(', ');
}
