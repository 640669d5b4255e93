import { readInput, shownText } from '#kernel';
import { examination } from '../shapes/index.js';
import type { CsvFault } from './csv-fault.js';
import { type ListedExamination, examinationColumns } from './examination-columns.js';
import { type GivenRow, headingAt, readRows } from './read-cells.js';

/** A row of the file, the heading being row 1, with what it says. */
export interface ListedRow extends ListedExamination {
  readonly row: number;
}

export interface ExaminationsCsv {
  readonly rows: readonly ListedRow[];
  readonly faults: readonly CsvFault[];
}

/** Records of an examiner's list (the first is the heading) to examinations; every fault with row, column, value and what would be right. */
export function readExaminationsCsv(records: readonly (readonly string[])[]): ExaminationsCsv {
  const rows: ListedRow[] = [];
  const faults = readRows(records, examinationColumns, ['serial', 'examined on', 'outcome'], (row, given, found) => {
    const read = readRow(row, given, found);
    if (read) rows.push(read);
  });
  return { rows, faults };
}

function readRow(row: number, { serial, pieces, examination: said }: GivenRow, faults: CsvFault[]): ListedRow | undefined {
  const before = faults.length;
  if (serial === undefined) faults.push({ row, column: 'serial', value: '', wanted: 'the serial of an item on file' });
  if (pieces !== undefined && !(Number.isInteger(pieces) && Number(pieces) > 0))
    faults.push({
      row,
      column: 'pieces',
      value: shownText(pieces),
      wanted: 'a whole number of pieces, 1 or more; empty where one thing was examined',
    });
  const read = readInput(examination, said ?? {});
  if (!read.ok)
    for (const { field, value, wanted } of read.error) faults.push({ row, column: columnOf(field), value: shownText(value), wanted });
  if (faults.length > before || !read.ok || typeof serial !== 'string') return undefined;
  return { row, serial, ...(typeof pieces === 'number' ? { pieces } : {}), examination: read.value };
}

/** The column of a field of an examination. */
export const columnOf = (field: string): string => {
  const heading = headingAt(examinationColumns, `examination.${field}`);
  return heading.startsWith('examination.') ? field : heading;
};
