/** A CSV text by RFC 4180: CRLF after each record, fields quoted where they must be, quotes doubled. */
export function writeCsv(rows: readonly (readonly (string | number | boolean | null | undefined)[])[]): string {
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: string | number | boolean | null | undefined): string {
  const text = value === null || value === undefined ? '' : String(value);
  return /[",\r\n]/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text;
}
