export interface CsvFault {
  /** Row of the file, the heading being row 1. */
  readonly row: number;
  readonly column: string;
  readonly value: string;
  readonly wanted: string;
  /** Of an edit that met another: what stands on file now. */
  readonly onFile?: string;
}

/** Headings that are unknown, given twice, or missing among the `needed`. */
export function headingFaults(heading: readonly string[], known: readonly string[], needed: readonly string[]): CsvFault[] {
  const faults: CsvFault[] = [];
  for (const [index, name] of heading.entries()) {
    if (!known.includes(name))
      faults.push({ row: 1, column: name || `column ${index + 1}`, value: name, wanted: `one of the headings: ${known.join('; ')}` });
    else if (heading.indexOf(name) !== index) faults.push({ row: 1, column: name, value: name, wanted: 'each heading once' });
  }
  for (const name of needed)
    if (!heading.includes(name)) faults.push({ row: 1, column: name, value: '', wanted: `a column headed "${name}"` });
  return faults;
}

/** Each record after the heading with its row, counted from 1; empty ones are passed over, and one of another length is a fault. */
export function eachRecord(
  records: readonly (readonly string[])[],
  faults: CsvFault[],
  take: (row: number, record: readonly string[]) => void,
): void {
  const fields = records[0]?.length ?? 0;
  records.slice(1).forEach((record, index) => {
    const row = index + 2;
    if (record.every((cell) => cell.trim() === '')) return;
    if (record.length === fields) return take(row, record);
    faults.push({ row, column: '', value: `${record.length} fields`, wanted: `${fields} fields, as in the heading (RFC 4180)` });
  });
}
