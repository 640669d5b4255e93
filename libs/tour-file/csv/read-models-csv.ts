import { readInput, shownText } from '#kernel';
import { catalogue } from '../shapes/index.js';
import type { CsvFault } from './csv-fault.js';
import { type ModelKind, modelColumns } from './model-columns.js';
import { type GivenRow, headingAt, readRows } from './read-cells.js';

export interface ModelsCsv {
  readonly models: readonly { readonly model: string }[];
  /** Model -> row of the file. */
  readonly rowOf: ReadonlyMap<string, number>;
  readonly faults: readonly CsvFault[];
}

/** Records of a CSV (the first is the heading) to models of a kind; every fault with row, column, value and what would be right. */
export function readModelsCsv(kind: ModelKind, records: readonly (readonly string[])[]): ModelsCsv {
  const models: { model: string }[] = [];
  const rowOf = new Map<string, number>();
  const faults = readRows(records, modelColumns(kind), ['model'], (row, given, found) => {
    const read = readRow(kind, row, given, found);
    if (!read) return;
    const twice = rowOf.get(read.model);
    if (twice !== undefined) {
      found.push({ row, column: 'model', value: `${read.model}, as in row ${twice}`, wanted: 'each model once' });
      return;
    }
    rowOf.set(read.model, row);
    models.push(read);
  });
  return { models, rowOf, faults };
}

function readRow(kind: ModelKind, row: number, given: GivenRow, faults: CsvFault[]): { model: string } | undefined {
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

/** The heading of the column that holds a field such as "holes[2].behindMm". */
export const headingOf = (kind: ModelKind, field: string): string => headingAt(modelColumns(kind), field);
