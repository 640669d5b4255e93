type Cell = string | number | boolean | null | undefined;

/**
 * A CSV text by RFC 4180: CRLF after each record, fields quoted where they must be, quotes doubled. The one writer of all: text that a spreadsheet would take
 * for a formula has a single quote before it; numbers stay numbers.
 */
export function writeCsv(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: Cell): string {
  const text = typeof value === 'string' ? guardCell(value) : value === null || value === undefined ? '' : String(value);
  return /[",\r\n]/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text;
}

/** What a spreadsheet takes for the beginning of a formula, full-width signs too; behind quotes, so that what is guarded comes back as it was. */
const formula = /^'*[=+\-@\t\r\n\0\uff0b\uff0d\uff1d\uff20]/;
const number = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

export const guardCell = (cell: string): string => (formula.test(cell) && !number.test(cell) ? `'${cell}` : cell);

/** The cell as it was before it was guarded. */
export const unguardCell = (cell: string): string => (cell.startsWith("'") && formula.test(cell) ? cell.slice(1) : cell);
