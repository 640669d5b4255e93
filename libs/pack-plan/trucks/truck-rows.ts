import { type RowChoice, type TruckCase, loadRowsOf } from '#truck-pack';
import { type Placement, type TruckRow, groupOf } from '../contract/index.js';

/** Slices across the truck that no piece reaches over: what a crew builds, bars and straps as one row. */
export function rowsOf(
  problem: TruckCase,
  placements: readonly Placement[],
  innerWidthMm: number,
  choices: readonly RowChoice[] = [],
): readonly TruckRow[] {
  const choiceOf = new Map(choices.flatMap(({ ids, fromMm: _from, toMm: _to, ...choice }) => ids.map((id) => [id, choice] as const)));
  const byId = new Map(placements.map((each) => [each.id, each]));
  const rows = loadRowsOf(problem, placements).map(({ ids }) => ids.map((id) => byId.get(id)!));
  return rows.map((pieces, index) => {
    const fromMm = Math.min(...pieces.map((each) => each.xMm));
    const toMm = Math.max(...pieces.map((each) => each.xMm + each.alongMm));
    const next = rows[index + 1];
    const across = Math.max(...pieces.filter((each) => each.zMm === 0).map((at) => widthAt(pieces, at.xMm)));
    const choice = choiceOf.get(pieces[0]!.id);
    return {
      ...(choice ? { choice } : {}),
      number: index + 1,
      fromMm,
      toMm,
      pieces: pieces.map((each) => each.id),
      label: [...new Set(pieces.map(groupOf))].join(', '),
      massKg: pieces.reduce((sum, each) => sum + each.massKg, 0),
      barAtMm: next === undefined || Math.min(...next.map((each) => each.xMm)) > toMm + 100 ? toMm : null,
      gapAcrossMm: Math.max(0, innerWidthMm - across),
      gapAheadMm: fromMm - Math.max(0, ...(rows[index - 1] ?? []).map((each) => each.xMm + each.alongMm)),
    };
  });
}

const widthAt = (pieces: readonly Placement[], x: number): number =>
  pieces.filter((each) => each.zMm === 0 && each.xMm <= x && each.xMm + each.alongMm > x).reduce((sum, each) => sum + each.acrossMm, 0);

/** Last in, first out, and by the place in the unloading order before that. */
export function unloadingOrder(placements: readonly Placement[], loadingOrder: readonly string[]): readonly string[] {
  const firstOff = new Map(placements.map((each) => [each.id, each.firstOff]));
  return [...loadingOrder].reverse().sort((a, b) => firstOff.get(a)! - firstOff.get(b)!);
}

const meet = (a0: number, a1: number, b0: number, b1: number): boolean => Math.min(a1, b1) > Math.max(a0, b0);

/** The first piece that could not go in where this order has it: something it stands on is not in yet, or something in its lane is; undefined when all can. */
export function blockedInOrder(placements: readonly Placement[], order: readonly string[]): string | undefined {
  const byId = new Map(placements.map((each) => [each.id, each]));
  const inside: Placement[] = [];
  for (const id of order) {
    const a = byId.get(id)!;
    const inLane = inside.some(
      (b) =>
        b.xMm >= a.xMm + a.alongMm &&
        meet(a.yMm, a.yMm + a.acrossMm, b.yMm, b.yMm + b.acrossMm) &&
        meet(a.zMm, a.zMm + a.heightMm, b.zMm, b.zMm + b.heightMm),
    );
    const waits = placements.some(
      (b) =>
        b !== a &&
        b.zMm + b.heightMm === a.zMm &&
        meet(a.xMm, a.xMm + a.alongMm, b.xMm, b.xMm + b.alongMm) &&
        meet(a.yMm, a.yMm + a.acrossMm, b.yMm, b.yMm + b.acrossMm) &&
        !inside.includes(b),
    );
    if (inLane || waits) return id;
    inside.push(a);
  }
  return undefined;
}

/**
 * What goes in first when the show comes down: what came off last goes in first, so the unloading order backwards. Where a waived piece stands in the way
 * of that, the loading order.
 */
export function loadOutOrder(placements: readonly Placement[], loadingOrder: readonly string[]): readonly string[] {
  const backwards = [...unloadingOrder(placements, loadingOrder)].reverse();
  return blockedInOrder(placements, backwards) === undefined ? backwards : loadingOrder;
}
