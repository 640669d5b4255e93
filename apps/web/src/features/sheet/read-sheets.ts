import { dateOfDayNumber, unguardCell } from '#kernel';
import { separatorOf } from '#tour-file';

/** A sheet as it stands in a file or was pasted: all its rows, those without anything in them too, so that row numbers are those of the file. */
export interface RawSheet {
  /** Of the file, and of the sheet where a file has several. */
  readonly name: string;
  readonly records: readonly (readonly string[])[];
  /** How it was read where that is not sure. */
  readonly said?: string;
}

export interface NotRead {
  readonly name: string;
  readonly why: string;
}

const zip = [0x50, 0x4b];
const compound = [0xd0, 0xcf, 0x11, 0xe0];
const begins = (bytes: Uint8Array, with_: readonly number[]): boolean => with_.every((each, at) => bytes[at] === each);

/** The sheets of a file: CSV with any separator, or .xlsx. */
export async function readSheets(file: File): Promise<readonly (RawSheet | NotRead)[]> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (bytes.length === 0) return [{ name: file.name, why: 'The file is empty.' }];
  if (begins(bytes, compound)) return [{ name: file.name, why: 'This is a workbook of an older kind (.xls). Save it as .xlsx or CSV.' }];
  try {
    return begins(bytes, zip) ? await readWorkbook(file) : [await readText(file.name, bytes)];
  } catch (fault) {
    return [{ name: file.name, why: `It cannot be read: ${(fault as Error).message.slice(0, 200)}` }];
  }
}

async function readWorkbook(file: File): Promise<readonly RawSheet[]> {
  const { default: readXlsx } = await import('read-excel-file/universal');
  const sheets = (await readXlsx(file)).filter(({ data }) => data.length > 0);
  return sheets.map(({ sheet, data }) => ({
    name: sheets.length === 1 ? file.name : `${file.name}, ${sheet}`,
    records: data.map((row) => row.map(written)),
  }));
}

/** What a cell says, in the way of a CSV: days as days, numbers without the last bits of the machine. */
function written(cell: unknown): string {
  if (cell === null || cell === undefined) return '';
  if (cell instanceof Date) return dateOfDayNumber(Math.floor(cell.getTime() / 86_400_000));
  if (typeof cell === 'number') return String(Number(cell.toPrecision(15)));
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return typeof cell === 'string' ? cell : '';
}

async function readText(name: string, bytes: Uint8Array): Promise<RawSheet> {
  const { text, said } = decoded(bytes);
  return { ...(await readPasted(name, text)), ...(said ? { said } : {}) };
}

/** What was copied from a spreadsheet, or is the text of a CSV file. */
export async function readPasted(name: string, text: string): Promise<RawSheet> {
  const { parse } = await import('csv-parse/browser/esm/sync');
  const records: string[][] = parse(text, { bom: true, delimiter: separatorOf(text), relax_column_count: true, skip_empty_lines: false });
  return { name, records: records.map((record) => record.map(unguardCell)) };
}

function decoded(bytes: Uint8Array): { text: string; said?: string } {
  const mark = begins(bytes, [0xff, 0xfe]) ? 'utf-16le' : begins(bytes, [0xfe, 0xff]) ? 'utf-16be' : undefined;
  if (mark) return { text: new TextDecoder(mark).decode(bytes) };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return {
      text: new TextDecoder('windows-1252').decode(bytes),
      said: 'Not UTF-8: read as Windows-1252. Look whether names with accents are right.',
    };
  }
}
