/** What is wrong in a row of a sheet, counted from 1. */
export interface RowFaults {
  readonly row: number;
  readonly said: string;
}

/** The sheet as it came, with a column beside it of what is wrong in each row: to be put right and sent again. */
export function correctedRows(records: readonly (readonly string[])[], headingAt: number, faults: readonly RowFaults[]): string[][] {
  const width = Math.max(...records.map((each) => each.length), 1);
  const saidOf = new Map<number, string[]>();
  for (const { row, said } of faults) saidOf.set(row, [...(saidOf.get(row) ?? []), said]);
  return records.map((record, at) => [
    ...record,
    ...Array.from({ length: width - record.length }, () => ''),
    at === headingAt ? whatIsWrong : (saidOf.get(at + 1) ?? []).join(' / '),
  ]);
}

/** Headed so, the column is passed over when the sheet comes in again. */
const whatIsWrong = 'what is wrong';
