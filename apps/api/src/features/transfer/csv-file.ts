import { parse } from 'csv-parse/sync';
import { unguardCell, writeCsv } from '#kernel';
import type { CsvFault } from '#tour-file';

export function writeCsvFile<T>(
  columns: readonly { readonly heading: string }[],
  rows: readonly T[],
  cell: (row: T, column: number) => string,
): string {
  return writeCsv([columns.map((each) => each.heading), ...rows.map((row) => columns.map((_, index) => cell(row, index)))]);
}

/** The records of a file in UTF-8 (RFC 4180), the heading first; or what is wrong with the file as a whole. */
export function readCsvFile(bytes: Buffer, mostRows: number): string[][] | CsvFault {
  if (bytes.length === 0) return { row: 1, column: '', value: '', wanted: 'a CSV file (RFC 4180) with a heading' };
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff) || bytes.subarray(0, 200).includes(0))
    return { row: 1, column: '', value: 'UTF-16', wanted: 'a CSV file in UTF-8; save it again as "CSV UTF-8"' };
  const text = textOf(bytes);
  if (text === undefined)
    return { row: 1, column: '', value: 'another encoding', wanted: 'a CSV file in UTF-8; save it again as "CSV UTF-8"' };
  try {
    const records: string[][] = parse(text, { bom: true, relax_column_count: true, skip_empty_lines: true, max_record_size: 100_000 });
    if (records.length > mostRows + 1)
      return {
        row: mostRows + 2,
        column: '',
        value: `${records.length - 1} rows`,
        wanted: `at most ${mostRows.toLocaleString('en')} rows ${mostRows < 100_000 ? 'here; larger files go to /api/imports' : 'in one file'}`,
      };
    return records.map((record) => record.map(unguardCell));
  } catch (fault) {
    return {
      row: Number((fault as { lines?: number }).lines ?? 1),
      column: '',
      value: (fault as Error).message.slice(0, 100),
      wanted: 'a CSV file by RFC 4180: fields with commas, quotes or line ends in quotes, quotes doubled',
    };
  }
}

/** undefined where the bytes are no UTF-8. */
function textOf(bytes: Buffer): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
