type Cell = string | number | boolean | null | undefined;

/**
 * A CSV text by RFC 4180: CRLF after each record, fields quoted where they must be, quotes doubled. The one writer of all: what a spreadsheet would take
 * for a formula has a single quote before it; numbers stay numbers.
 */
export function writeCsv(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: Cell): string {
  const text = typeof value === 'string' ? guardCell(value) : value === null || value === undefined ? '' : String(value);
  return /[",\r\n]/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text;
}

/** What a spreadsheet takes for the beginning of a formula, full-width and small signs, a minus and a dash that is typed for one too; behind blanks and quotes. */
const formula = /^["'\s]*[=+\-@\0\u2013\u2212\ufe62\ufe63\ufe66\ufe6b\uff0b\uff0d\uff1d\uff20]/;
const number = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
/** Where another reader begins a new cell: one of another country, or one that takes the quotes otherwise. */
const boundary = /([;\t\r\n])/;
const suspicious = /[=+\-@\0\t\r\n\u2013\u2212\ufe62\ufe63\ufe66\ufe6b\uff0b\uff0d\uff1d\uff20]/;
const beginsEmpty = /^'*[\t\r\n]/;

/** Every piece that a reader may take for a cell begins with a single quote where it would be a formula; numbers stay as they are. */
export function guardCell(cell: string): string {
  if (!suspicious.test(cell) || number.test(cell)) return cell;
  const guarded = cell
    .split(boundary)
    .map((piece) => (formula.test(piece) ? `'${piece}` : piece))
    .join('');
  return beginsEmpty.test(cell) ? `'${guarded}` : guarded;
}

/** The cell as it was before it was guarded. */
export function unguardCell(cell: string): string {
  if (!suspicious.test(cell)) return cell;
  const pieces = (beginsEmpty.test(cell) && cell.startsWith("'") ? cell.slice(1) : cell).split(boundary);
  return pieces.map((piece) => (piece.startsWith("'") && formula.test(piece) ? piece.slice(1) : piece)).join('');
}
