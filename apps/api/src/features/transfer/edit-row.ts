import { mergeEdit } from '#kernel';
import type { CsvFault } from '#tour-file';
import { clashInWords } from '../../platform/faults/clash.js';

type Cells = Readonly<Record<string, string>>;

/** One row as it was read and as it is to be, each by its headings. */
export interface RowEdit {
  readonly heading: readonly string[];
  readonly was: Cells;
  readonly wanted: Cells;
}

/** The records of an edit: the heading, the row as it was read, the row as it is to be. */
export function readRowEdit(records: readonly (readonly string[])[]): RowEdit | CsvFault {
  const [heading = [], was, wanted, ...more] = records;
  if (!was || !wanted || more.length > 0 || [was, wanted].some((row) => row.length !== heading.length))
    return {
      row: 1,
      column: '',
      value: `${records.length} records`,
      wanted: 'a heading, the row as it was read, and the row as it is to be',
    };
  const cellsOf = (row: readonly string[]): Cells =>
    Object.fromEntries(heading.map((name, index) => [name.trim(), (row[index] ?? '').trim()]));
  return { heading: heading.map((name) => name.trim()), was: cellsOf(was), wanted: cellsOf(wanted) };
}

/** The heading and the row to be saved, over what stands on file now; or the cells that somebody else wrote meanwhile, with both values. */
export function rowToSave({ heading, was, wanted }: RowEdit, now: Cells): readonly string[][] | readonly CsvFault[] {
  const onFile = Object.fromEntries(heading.map((name) => [name, (now[name] ?? '').trim()]));
  const outcome = mergeEdit(was, wanted, onFile);
  if ('merged' in outcome) return [[...heading], heading.map((name) => outcome.merged[name] ?? '')];
  return outcome.clashes.map(({ field }) => ({
    row: 3,
    column: field,
    value: wanted[field] ?? '',
    wanted: clashInWords({ was: was[field], yours: wanted[field], onFile: onFile[field] }),
    onFile: onFile[field] ?? '',
  }));
}

export const isFault = (each: RowEdit | CsvFault): each is CsvFault => 'column' in each;
export const areFaults = (rows: readonly string[][] | readonly CsvFault[]): rows is readonly CsvFault[] =>
  rows.some((each) => !Array.isArray(each));
