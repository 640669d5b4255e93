import { writeCsv } from '#kernel';
import type { Match } from './match-columns.js';

export interface MatchedSheet {
  /** The columns that are read, under our headings. */
  readonly records: readonly (readonly string[])[];
  readonly csv: string;
  /** The row of the sheet, its heading's included, that a row of the records stands in; both counted from 1. */
  readonly rowOf: (row: number) => number;
  /** What the sheet itself has above the column that we call so. */
  readonly columnOf: (heading: string) => string;
}

/**
 * A sheet under our headings: of each row the columns that are read, rows without anything left out. `records`: all rows of the sheet, the heading
 * at `headingAt`.
 */
export function matchedSheet(records: readonly (readonly string[])[], headingAt: number, match: Match): MatchedSheet {
  const heading = records[headingAt] ?? [];
  const read = match.flatMap((ours, at) => (ours === null ? [] : [{ ours, at, theirs: heading[at] ?? '' }]));
  const rows = records.flatMap((record, at) => {
    const cells = read.map((each) => (record[each.at] ?? '').trim());
    return at > headingAt && cells.some((cell) => cell !== '') ? [{ cells, at }] : [];
  });
  const matched = [read.map((each) => each.ours), ...rows.map((each) => each.cells)];
  return {
    records: matched,
    csv: writeCsv(matched),
    rowOf: (row) => (row <= 1 ? headingAt : (rows[row - 2]?.at ?? headingAt)) + 1,
    columnOf: (ours) => read.find((each) => each.ours === ours)?.theirs || ours,
  };
}
