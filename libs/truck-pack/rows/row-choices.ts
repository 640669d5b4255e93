import type { RowChoice } from '../case/index.js';
import type { Placed } from '../space/index.js';
import { type BuiltRow, placedRow } from './built-row.js';
import type { StandingRow } from './row-arrange.js';

/** What the search and the arranging of a truck's rows came to. */
export interface ChosenRows {
  /** In the order of the search. */
  readonly planned: readonly BuiltRow[];
  /** What the next best row loses at each planned one's place. */
  readonly nextBestLost: readonly (number | undefined)[];
  /** As they stand in the end. */
  readonly standing: readonly StandingRow[];
  readonly placed: readonly Placed[];
  readonly kept: readonly Placed[];
}

/** Why each row of a truck stands where it does, from the nose; what is kept in slices that no piece reaches over. */
export function rowChoices({ planned, nextBestLost, standing, placed, kept }: ChosenRows): readonly RowChoice[] {
  const now = new Map(placed.map((each) => [each.piece, each]));
  let endMm = 0;
  const chosen = standing.map(({ row, x, room }, index): RowChoice => {
    const asPlanned = placedRow(row.lanes, x, room.fromMm);
    const before = planned.indexOf(row);
    const { lost } = row.planned.pattern;
    const next = nextBestLost[before];
    const nextBestMm = next === undefined ? undefined : Math.round(next - lost) + 0;
    const freeAheadMm = x - endMm;
    endMm = x + row.depth;
    return {
      code: nextBestMm === undefined ? 'only' : nextBestMm < 0 ? 'shorter-later' : 'least-lost',
      ...extentOf(asPlanned),
      lostMm: Math.round(lost),
      ...(nextBestMm === undefined ? {} : { nextBestMm }),
      freeAheadMm,
      movedRows: index - before,
      isLevelled: asPlanned.some((each) => now.get(each.piece)!.y !== each.y),
    };
  });
  return [...chosen, ...slicesOf(kept).map(keptChoice)].sort((a, b) => a.fromMm - b.fromMm);
}

const keptChoice = (slice: readonly Placed[]): RowChoice => ({
  code: 'kept',
  ...extentOf(slice),
  lostMm: 0,
  freeAheadMm: 0,
  movedRows: 0,
  isLevelled: false,
});

function extentOf(placed: readonly Placed[]): Pick<RowChoice, 'fromMm' | 'toMm' | 'ids' | 'stops'> {
  const stops = new Map<number, number>();
  for (const { piece } of placed) stops.set(piece.firstOff, (stops.get(piece.firstOff) ?? 0) + 1);
  return {
    fromMm: placed.reduce((least, each) => Math.min(least, each.x), Infinity),
    toMm: placed.reduce((most, each) => Math.max(most, each.x + each.along), 0),
    ids: placed.map((each) => each.piece.id),
    stops: [...stops].map(([firstOff, pieces]) => ({ firstOff, pieces })).sort((a, b) => b.firstOff - a.firstOff),
  };
}

function slicesOf(placed: readonly Placed[]): Placed[][] {
  const slices: Placed[][] = [];
  let far = 0;
  for (const each of [...placed].sort((a, b) => a.x - b.x)) {
    if (slices.length === 0 || each.x >= far) slices.push([each]);
    else slices.at(-1)!.push(each);
    far = Math.max(far, each.x + each.along);
  }
  return slices;
}
