import { readInput, shownText } from '#kernel';
import { catalogue } from '../shapes/index.js';
import { type CsvFault, headingFaults } from './csv-fault.js';
import { type ModelColumn, type ModelKind, modelColumns } from './model-columns.js';

export interface ModelsCsv {
  readonly models: readonly { readonly model: string }[];
  readonly faults: readonly CsvFault[];
}

/** Records of a CSV (the first is the heading) to models of a kind; every fault with row, column, value and what would be right. */
export function readModelsCsv(kind: ModelKind, records: readonly (readonly string[])[]): ModelsCsv {
  const columns = new Map(modelColumns(kind).map((each) => [each.heading, each]));
  const spelt = new Map([...columns.keys()].map((each) => [each.toLowerCase(), each]));
  const heading = (records[0] ?? []).map((each) => spelt.get(each.trim().toLowerCase()) ?? each.trim());
  const faults: CsvFault[] = headingFaults(heading, [...columns.keys()], ['model']);
  if (faults.length > 0) return { models: [], faults };
  const models: { model: string }[] = [];
  const rowOf = new Map<string, number>();
  records.slice(1).forEach((record, index) => {
    const row = index + 2;
    if (record.every((cell) => cell.trim() === '')) return;
    if (record.length !== heading.length)
      return void faults.push({
        row,
        column: '',
        value: `${record.length} fields`,
        wanted: `${heading.length} fields, as in the heading (RFC 4180)`,
      });
    const read = readRow(
      kind,
      row,
      heading.map((name, at) => [columns.get(name)!, record[at]!.trim()] as const),
      faults,
    );
    if (!read) return;
    const twice = rowOf.get(read.model);
    if (twice !== undefined) faults.push({ row, column: 'model', value: `${read.model}, as in row ${twice}`, wanted: 'each model once' });
    rowOf.set(read.model, row);
    models.push(read);
  });
  return { models, faults };
}

function readRow(
  kind: ModelKind,
  row: number,
  cells: readonly (readonly [ModelColumn, string])[],
  faults: CsvFault[],
): { model: string } | undefined {
  const before = faults.length;
  const given: Record<string, unknown> = {};
  for (const [{ heading, path, form }, text] of cells) {
    if (text === '') continue;
    const value = form.read(text);
    if (value === undefined) faults.push({ row, column: heading, value: text.slice(0, 80), wanted: form.hint });
    else put(given, path, value);
  }
  if (faults.length > before) return undefined;
  const read = readInput(catalogue.shape[kind], [given]);
  if (read.ok) return read.value[0];
  for (const fault of read.error)
    faults.push({
      row,
      column: headingOf(kind, fault.field.replace(/^\[0\]\.?/, '')),
      value: shownText(fault.value),
      wanted: fault.wanted,
    });
  return undefined;
}

function put(into: Record<string, unknown>, path: readonly string[], value: unknown): void {
  const [first, ...rest] = path as [string, ...string[]];
  if (rest.length === 0) into[first] = value;
  else put((into[first] ??= {}) as Record<string, unknown>, rest, value);
}

/** The heading of the column that holds a field such as "holes[2].behindMm". */
export function headingOf(kind: ModelKind, field: string): string {
  const inside = modelColumns(kind).find(
    (each) => field === each.path.join('.') || new RegExp(`^${each.path.join('\\.')}[.[]`).test(field),
  );
  return inside?.heading ?? field;
}
