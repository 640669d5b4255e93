import { writeCsv } from '#kernel';
import { type CsvFault, type MatchedSheet, correctedRows } from '#tour-file';
import { countOf } from '../../platform/written.js';
import type { RawSheet } from './read-sheets.js';

/** Faults that want the same of the same column; rows and columns are those of the records under our headings. */
export interface FaultGroup {
  readonly column: string;
  readonly wanted: string;
  readonly count: number;
  readonly rows?: readonly number[] | null | undefined;
  readonly first: readonly { readonly row: number; readonly value: string }[];
}

/** By what is wanted where, the most frequent first. */
export function grouped(faults: readonly CsvFault[]): readonly FaultGroup[] {
  const groups = new Map<string, CsvFault[]>();
  for (const fault of faults) {
    const key = `${fault.column}\n${fault.wanted}`;
    groups.set(key, [...(groups.get(key) ?? []), fault]);
  }
  return [...groups.values()]
    .map((all) => ({
      column: all[0]?.column ?? '',
      wanted: all[0]?.wanted ?? '',
      count: all.length,
      rows: all.map((each) => each.row),
      first: all.slice(0, 5).map(({ row, value }) => ({ row, value })),
    }))
    .sort((a, b) => b.count - a.count);
}

/** All faults of a sheet, grouped and counted, by its own rows and headings; and the sheet to take away with what is wrong beside each row. */
export function SheetFaults({
  faults,
  raw,
  headingAt,
  sheet,
}: {
  faults: readonly FaultGroup[];
  raw: RawSheet;
  headingAt: number;
  sheet: MatchedSheet;
}) {
  const count = faults.reduce((sum, each) => sum + each.count, 0);
  return (
    <div className="faults" role="alert">
      <p>
        <b>stop</b> {raw.name}: {countOf(count)} {count === 1 ? 'fault' : 'faults'}. Nothing of it came in.
      </p>
      <ul>
        {faults.map((each) => (
          <li key={`${each.column} ${each.wanted}`}>
            {countOf(each.count)} × {sheet.columnOf(each.column) || 'the row'}: wanted {each.wanted}
            <ul>
              {each.first.map(({ row, value }) => (
                <li key={row}>
                  row {sheet.rowOf(row)}: {value === '' ? 'empty' : <code>{value}</code>}
                </li>
              ))}
              {each.count > each.first.length && <li>and {countOf(each.count - each.first.length)} more rows</li>}
            </ul>
          </li>
        ))}
      </ul>
      <p>
        <button type="button" className="plain small" onClick={() => saveCorrected(faults, raw, headingAt, sheet)}>
          Save a copy with what is wrong beside each row
        </button>
      </p>
    </div>
  );
}

function saveCorrected(faults: readonly FaultGroup[], raw: RawSheet, headingAt: number, sheet: MatchedSheet): void {
  const said = faults.flatMap(({ rows, first, column, wanted }) =>
    (rows ?? first.map((each) => each.row)).map((row) => ({ row: sheet.rowOf(row), said: `${sheet.columnOf(column)}: wanted ${wanted}` })),
  );
  const text = writeCsv(correctedRows(raw.records, headingAt, said));
  const link = document.createElement('a');
  // With its mark a spreadsheet reads the text as what it is.
  link.href = URL.createObjectURL(new Blob(['\uFEFF', text], { type: 'text/csv' }));
  link.download = `${raw.name.replace(/\.\w+$/, '').replaceAll(/[^\p{L}\p{N}]+/gu, '-')}-to-correct.csv`;
  link.click();
  URL.revokeObjectURL(link.href);
}
