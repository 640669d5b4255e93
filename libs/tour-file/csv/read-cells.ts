import { type CsvFault, eachRecord, headingFaults } from './csv-fault.js';
import type { ModelColumn } from './model-columns.js';

/** What a row gives: the object that its columns name. Cells that are empty say nothing. */
export type GivenRow = Record<string, unknown>;

/**
 * Records of a CSV (the first is the heading) row by row, each handed on as the object that its columns name; rows without anything in them are passed over.
 * Every fault with row, column, value and what would be right.
 */
export function readRows(
  records: readonly (readonly string[])[],
  columns: readonly ModelColumn[],
  needed: readonly string[],
  take: (row: number, given: GivenRow, faults: CsvFault[]) => void,
): readonly CsvFault[] {
  const spelt = new Map(columns.map((each) => [each.heading.toLowerCase(), each]));
  const heading = (records[0] ?? []).map((each) => spelt.get(each.trim().toLowerCase())?.heading ?? each.trim());
  const faults: CsvFault[] = headingFaults(
    heading,
    columns.map((each) => each.heading),
    needed,
  );
  if (faults.length > 0) return faults;
  const inOrder = heading.flatMap((name) => spelt.get(name.toLowerCase()) ?? []);
  eachRecord(records, faults, (row, record) => {
    const given = readCells(row, record, inOrder, faults);
    if (given) take(row, given, faults);
  });
  return faults;
}

function readCells(row: number, record: readonly string[], columns: readonly ModelColumn[], faults: CsvFault[]): GivenRow | undefined {
  const before = faults.length;
  const given: GivenRow = {};
  for (const [at, { heading, path, form }] of columns.entries()) {
    const text = (record[at] ?? '').trim();
    if (text === '') continue;
    const value = form.read(text);
    if (value === undefined) faults.push({ row, column: heading, value: text.slice(0, 80), wanted: form.hint });
    else put(given, path, value);
  }
  return faults.length > before ? undefined : given;
}

function put(into: Record<string, unknown>, path: readonly string[], value: unknown): void {
  const [first, ...rest] = path as [string, ...string[]];
  if (rest.length === 0) into[first] = value;
  else put((into[first] ??= {}) as Record<string, unknown>, rest, value);
}

/** The heading of the column that holds a field such as "holes[2].behindMm"; the field where none does. */
export function headingAt(columns: readonly ModelColumn[], field: string): string {
  const inside = columns.find((each) => field === each.path.join('.') || new RegExp(`^${each.path.join('\\.')}[.[]`).test(field));
  return inside?.heading ?? field;
}
