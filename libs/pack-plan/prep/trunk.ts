import type { HardwareLine } from '../contract/index.js';

/** Pieces of one batch that a trunk should hold. */
export interface TrunkLine {
  readonly key: string;
  readonly item: string;
  readonly lot: string;
  readonly count: number;
}

/** What each trunk should hold, by its batches, in the order of the trunks' names. */
export function trunkLines(lines: readonly Pick<HardwareLine, 'key' | 'item' | 'takenFrom'>[]): ReadonlyMap<string, readonly TrunkLine[]> {
  const all = lines.flatMap(({ key, item, takenFrom }) =>
    takenFrom.flatMap(({ lot, trunk, count }) => (trunk === null || count === 0 ? [] : [{ trunk, line: { key, item, lot, count } }])),
  );
  const trunks = [...new Set(all.map((each) => each.trunk))].sort();
  return new Map(trunks.map((trunk) => [trunk, all.filter((each) => each.trunk === trunk).map((each) => each.line)]));
}

/** Lines of which another number was counted, or none: by how much. */
export function wrongCounts(
  lines: readonly TrunkLine[],
  counted: ReadonlyMap<string, number>,
): readonly (TrunkLine & { readonly counted: number | null })[] {
  return lines.flatMap((line) => {
    const found = counted.get(line.lot) ?? null;
    return found === line.count ? [] : [{ ...line, counted: found }];
  });
}
