import { parse } from 'csv-parse/sync';
import { unguardCell, writeCsv } from '#kernel';
import { type CsvFault, separatorOf } from '#tour-file';

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
  if (isUtf16(bytes)) return { row: 1, column: '', value: 'UTF-16', wanted: 'a CSV file in UTF-8; save it again as "CSV UTF-8"' };
  const empty = bytes.indexOf(0);
  if (empty >= 0)
    return {
      row: rowOfByte(bytes, empty),
      column: '',
      value: `an empty byte (NUL) at byte ${empty + 1}`,
      wanted: 'text alone: a file with empty bytes was damaged on its way or is no CSV file',
    };
  const text = textOf(bytes);
  if (text === undefined)
    return { row: 1, column: '', value: 'another encoding', wanted: 'a CSV file in UTF-8; save it again as "CSV UTF-8"' };
  try {
    const records: string[][] = parse(text, {
      bom: true,
      delimiter: separatorOf(text),
      relax_column_count: true,
      skip_empty_lines: true,
      max_record_size: longestRow,
    });
    if (records.length > mostRows + 1)
      return {
        row: mostRows + 2,
        column: '',
        value: `${records.length - 1} rows`,
        wanted: `at most ${mostRows.toLocaleString('en')} rows ${mostRows < 100_000 ? 'here; larger files go to /api/imports' : 'in one file'}`,
      };
    return records.map((record) => record.map(unguardCell));
  } catch (fault) {
    const { code = '', lines = 1 } = fault as { code?: string; lines?: number };
    const said = brokenBy[code] ?? { value: 'something that is no CSV', wanted: asRfc };
    return { row: Number(lines), column: '', ...said };
  }
}

/** The longest row, characters. */
const longestRow = 100_000;
const asRfc = 'a CSV file by RFC 4180: fields with commas, quotes or line ends in quotes, quotes doubled';

/** What the reader found, by its code, in words of this house. */
const brokenBy: Readonly<Record<string, Pick<CsvFault, 'value' | 'wanted'>>> = {
  CSV_MAX_RECORD_SIZE: {
    value: `a row of more than ${longestRow.toLocaleString('en')} characters`,
    wanted: `rows of at most ${longestRow.toLocaleString('en')} characters; a quote that is never closed makes one row of all that follows`,
  },
  CSV_QUOTE_NOT_CLOSED: { value: 'a quote that is never closed', wanted: asRfc },
  CSV_INVALID_CLOSING_QUOTE: { value: 'letters behind a closing quote', wanted: asRfc },
  INVALID_OPENING_QUOTE: { value: 'a quote in a field that does not begin with one', wanted: asRfc },
};

/** By its mark, or without one by what Latin letters look like in it: every other byte of the beginning is empty. */
function isUtf16(bytes: Buffer): boolean {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) return true;
  const beginning = [...bytes.subarray(0, 200)];
  const empty = [0, 1].map((odd) => beginning.filter((byte, at) => at % 2 === odd && byte === 0).length);
  return beginning.length >= 4 && Math.max(...empty) > beginning.length / 4 && Math.min(...empty) === 0;
}

/** The line that a byte is on, from 1. */
const rowOfByte = (bytes: Buffer, at: number): number => 1 + bytes.subarray(0, at).filter((byte) => byte === 0x0a).length;

/** undefined where the bytes are no UTF-8. */
function textOf(bytes: Buffer): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
