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
