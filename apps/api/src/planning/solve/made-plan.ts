import { canonicalJson } from '#kernel';
import { type PackPlan, changedInputs, isOpen, moveKey, rowKey, rowWays, tickText } from '#pack-plan';
import type { TourFile } from '#tour-file';

/** A plan on its way from a thread to the database: written out there, so that nobody else has to. */
export interface MadePlan {
  readonly tourId: string;
  readonly showId: string;
  readonly showName: string;
  /** The plan as JSON. */
  readonly text: string;
  /** Nothing of what it was made from has changed since it was begun. */
  readonly isFresh: boolean;
  /** Ticks of the plan that it was made from which still hold. */
  readonly standing: readonly string[];
  /** What ended the work on it; null where the engines do not say. */
  readonly stoppedBy: string | null;
  /** The box moves where nobody knows whether there is a shorter list, and below how many there is none; null where it is proved. */
  readonly open: OpenMoves | null;
}

export interface OpenMoves {
  readonly moves: number;
  readonly atLeast: number;
}

/** `file`: as the plan was made from it. `from`: the plan in whose place it comes, whose ticks are kept where they still hold. */
export function writeOut(plan: PackPlan, file: TourFile, from?: PackPlan): MadePlan {
  return {
    tourId: plan.tour.id,
    showId: plan.show.id,
    showName: plan.show.name,
    text: JSON.stringify(plan),
    isFresh: changedInputs(plan, file).length === 0,
    standing: from ? unchangedTicks(from, plan) : [],
    stoppedBy: stoppedByOf(plan),
    open: isOpen(plan) ? { moves: plan.carts.boxMoves, atLeast: plan.carts.bound } : null,
  };
}

/** The least that an engine says of its part: a plan is proved where all of it is. */
function stoppedByOf({ carts, truck }: { readonly carts: object; readonly truck: object }): string | null {
  const said = [carts, truck].map((part) => (part as { readonly stoppedBy?: string }).stoppedBy);
  return ['clock', 'work', 'proof'].find((each) => said.includes(each)) ?? null;
}

/** What a crew carries out; the words beside a move may be others. */
const movesOf = ({ carts }: PackPlan): string =>
  canonicalJson(carts.moves.map(({ number, round, box, from, to }) => ({ number, round, box, from, to })));

/** What may stay ticked: rows whose pieces stand exactly as before, and box moves where the list of them is the same. */
function unchangedTicks(before: PackPlan, after: PackPlan): readonly string[] {
  const rowsOf = (plan: PackPlan) =>
    plan.truck.trucks.flatMap((truck) =>
      truck.rows.flatMap((row) => {
        const pieces = truck.placements.filter((each) => row.pieces.includes(each.id));
        const stands = canonicalJson(pieces.map(({ id, xMm, yMm, zMm, turned }) => ({ id, xMm, yMm, zMm, turned })));
        return rowWays.map((way) => [tickText(rowKey(truck.id, row.number, way)), stands] as const);
      }),
    );
  const was = new Map(rowsOf(before));
  const moves = movesOf(before) === movesOf(after) ? after.carts.moves.map((each) => tickText(moveKey(each.number))) : [];
  return [...rowsOf(after).flatMap(([what, pieces]) => (was.get(what) === pieces ? [what] : [])), ...moves];
}
