import type { CsvFault } from '#tour-file';

/** Faults that want the same in the same column: how many, and the first of them. */
export interface FaultGroup {
  readonly column: string;
  readonly wanted: string;
  readonly count: number;
  /** All rows of the file that have it, as far as they are kept. */
  readonly rows: readonly number[];
  readonly first: readonly { readonly row: number; readonly value: string }[];
}

const mostExamples = 5;
const mostRows = 2000;

/** By what is wanted where, the most frequent first. */
export function groupedFaults(faults: readonly CsvFault[]): readonly FaultGroup[] {
  const groups = new Map<string, CsvFault[]>();
  for (const fault of faults) {
    const key = `${fault.column}\n${fault.wanted}`;
    const group = groups.get(key);
    if (group) group.push(fault);
    else groups.set(key, [fault]);
  }
  return [...groups.values()]
    .map((group) => ({
      column: group[0]?.column ?? '',
      wanted: group[0]?.wanted ?? '',
      count: group.length,
      rows: group.slice(0, mostRows).map(({ row }) => row),
      first: group.slice(0, mostExamples).map(({ row, value }) => ({ row, value })),
    }))
    .sort((a, b) => b.count - a.count);
}
