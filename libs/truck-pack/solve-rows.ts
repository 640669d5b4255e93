import { seededRandom } from '#kernel';
import { boundOf, floorUse } from './bound/index.js';
import { type KeepOptions, type Truck, type TruckCase, type Violation, couldRide } from './case/index.js';
import { verifyKept } from './check/index.js';
import { type Found, type RowsAnswer, type Search, answerOf, isShorter, searchRound } from './fleet/index.js';
import { type TruckRows, rowsInTruck } from './rows/index.js';
import { type Placed, keptIn } from './space/index.js';

export interface RowLimits extends KeepOptions {
  readonly seed: number;
  /** Rounds of search, each wider than the one before; equal seed and work limit give the equal load. */
  readonly workLimit: number;
  /** Cuts the search short; the first round that finds a load is always finished. */
  readonly timeLimitSeconds?: number;
  /** Milliseconds of any clock that does not go back; needed for a time limit. */
  readonly now?: () => number;
  /** Told the part that is done, 0 to 1. */
  readonly onProgress?: (part: number) => void;
}

/**
 * Loads built by hand: rows straight across the truck from the nose, what comes off last first. A row takes pieces of one place in the unloading order, and of
 * the next only when nothing of the first is left; so every row can be unloaded before the one behind it. What is kept stays, and the rest is planned around it.
 * undefined where nothing is kept and rows do not hold all pieces inside the limits; with something kept the rest is left over with a reason.
 */
export function solveRows(problem: TruckCase, limits: RowLimits = { seed: 1, workLimit: 1 }): RowsAnswer | undefined {
  const refused = verifyKept(problem, limits);
  if (refused.length > 0) return refusal(problem, limits, refused);
  const { kept = [], waived } = limits;
  const deadline = (limits.now?.() ?? 0) + (limits.timeLimitSeconds ?? Infinity) * 1000;
  const byId = new Map(problem.pieces.map((each) => [each.id, each]));
  const keptIds = new Set(kept.map((each) => each.id));
  const riding = problem.pieces.filter((each) => keptIds.has(each.id) || couldRide(each, problem.trucks));
  const floor = floorUse(problem, riding);
  const search: Search = {
    problem,
    pieces: riding.filter((each) => !keptIds.has(each.id)),
    tooLarge: problem.pieces.filter((each) => !riding.includes(each)),
    floor,
    bound: boundOf(problem, riding, floor),
    keptOf: new Map(problem.trucks.map((truck) => [truck, keptIn(truck, byId, kept)])),
    loaded: new Set(kept.flatMap((each) => (each.loaded ? [each.id] : []))),
    waived: new Set(waived),
    random: seededRandom(limits.seed),
    pack: rowsInTruck,
    isOver: () => limits.now !== undefined && limits.now() >= deadline,
  };
  const answer = improve(search, limits) ?? (kept.length > 0 ? withLeftOver(search) : undefined);
  return answer && waived ? { ...answer, waived } : answer;
}

function refusal(problem: TruckCase, { waived }: KeepOptions, refused: readonly Violation[]): RowsAnswer {
  return {
    status: 'feasible',
    trucks: [],
    leftOver: problem.pieces.map(({ id }) => ({ id, reason: 'nothing is planned: what is kept in its place breaks a rule' })),
    bound: { trucks: 0, usedLengthMm: 0, reason: 'nothing is planned' },
    refused,
    ...(waived ? { waived } : {}),
  };
}

/** Rounds until the work limit, the time limit or a proof; a load with fewer trucks, then a shorter one, replaces the best. */
function improve(search: Search, { workLimit, onProgress }: RowLimits): RowsAnswer | undefined {
  const seen = new Map<string, TruckRows>();
  let best: Found | undefined;
  for (let round = 0; round < workLimit && best?.answer.status !== 'optimal'; round++) {
    if (search.isOver() && (best ? round > 0 : round > 5)) break;
    const found = searchRound(search, round, seen, best);
    if (found && (!best || isShorter(found.answer, best.answer))) best = found;
    seen.clear();
    onProgress?.((round + 1) / workLimit);
  }
  onProgress?.(1);
  return best?.answer;
}

/** What rows take truck by truck beside what is kept; a truck that is outside a limit gives pieces away until it is inside. */
function withLeftOver(search: Search): RowsAnswer {
  const { problem, keptOf, loaded, waived, floor, random } = search;
  const filled = new Map<Truck, TruckRows>();
  const outside: Violation[] = [];
  let rest = search.pieces;
  for (const truck of problem.trucks) {
    let own = rest;
    for (;;) {
      const rows = rowsInTruck({
        problem,
        truck,
        pieces: own,
        kept: keptOf.get(truck)!,
        loaded,
        waived,
        prices: floor.prices,
        beam: 6,
        random,
        shake: false,
      });
      filled.set(truck, rows);
      own = own.filter((each) => !rows.over.includes(each));
      if (rows.space && rows.outsideKg === 0) break;
      if (own.length === 0) {
        if (rows.outsideKg > 0) outside.push({ code: 'limit', subject: truck.id, sentence: outsideSentence(keptOf.get(truck)!) });
        break;
      }
      own = own.slice(0, Math.floor(own.length * 0.9));
    }
    const inside = new Set(filled.get(truck)!.space?.placed.map((each) => each.piece));
    rest = rest.filter((each) => !inside.has(each));
  }
  if (outside.length > 0) return refusal(problem, {}, outside);
  const answer = answerOf(search, filled);
  return {
    ...answer,
    status: 'feasible',
    leftOver: [
      ...answer.leftOver,
      ...rest.map(({ id }) => ({ id, reason: 'no place was found for it in rows beside what is kept, inside the limits' })),
    ],
    bound: { trucks: 0, usedLengthMm: 0, reason: 'not all pieces ride: no bound is claimed' },
  };
}

const outsideSentence = (kept: readonly Placed[]): string =>
  `is outside an axle or balance limit with what is kept in it (${kept.map((each) => each.piece.id).join(', ')}), and no rows beside it were found that level it`;
