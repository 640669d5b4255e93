import { seededRandom } from '#kernel';
import { floorUse, waysIn } from './floor-bound.js';
import type { KeepOptions } from './kept.js';
import type { Placed } from './load-space.js';
import { keptIn } from './loading-order.js';
import { type LengthCauses, rowsInTruck, type TruckRows } from './one-truck-rows.js';
import { type TruckPackAnswer, truckAnswer } from './pack-answer.js';
import { boundOf } from './pack-bound.js';
import { couldRide, fillFleet, tooLarge } from './row-fleet.js';
import type { Piece, Truck, TruckCase } from './truck-case.js';
import { verifyKept } from './verify-truck-pack.js';
import type { Violation } from './violation.js';

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

/** A load in rows, and where its length goes beyond the bound. */
export type RowsAnswer = TruckPackAnswer & { readonly causes?: LengthCauses };

interface Search {
  readonly problem: TruckCase;
  readonly pieces: readonly Piece[];
  readonly tooLarge: readonly Piece[];
  readonly floor: ReturnType<typeof floorUse>;
  readonly bound: TruckPackAnswer['bound'];
  readonly keptOf: ReadonlyMap<Truck, readonly Placed[]>;
  readonly loaded: ReadonlySet<string>;
  readonly waived: ReadonlySet<string>;
  readonly random: () => number;
  readonly isOver: () => boolean;
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
    isOver: () => limits.now !== undefined && limits.now() >= deadline,
  };
  const answer = improve(search, limits) ?? (kept.length > 0 ? withLeftOver(search) : undefined);
  return answer && waived ? { ...answer, waived } : answer;
}

function improve(search: Search, { workLimit, onProgress }: RowLimits): RowsAnswer | undefined {
  const seen = new Map<string, TruckRows>();
  let best: RowsAnswer | undefined;
  for (let round = 0; round < workLimit && best?.status !== 'optimal'; round++) {
    if (round > 0 && search.isOver()) break;
    const beam = Math.min(96, 6 * 2 ** Math.floor(round / 2));
    const most = best?.trucks.length ?? search.problem.trucks.length;
    for (const trucks of fleets(search, most, round)) {
      if (search.isOver() && best) break;
      const filled = fill(search, trucks, beam, round, seen);
      if (!filled) continue;
      const answer = answerOf(search, filled);
      if (!best || isShorter(answer, best)) best = answer;
      break;
    }
    onProgress?.((round + 1) / workLimit);
  }
  onProgress?.(1);
  return best;
}

/** Sets of trucks to try, fewest first: those with something kept, then the largest. */
function* fleets({ problem, bound, keptOf }: Search, most: number, round: number): Generator<readonly Truck[]> {
  const holds = (truck: Truck) => Number(keptOf.get(truck)!.length > 0);
  const size = (truck: Truck) => truck.innerLengthMm * truck.innerWidthMm;
  const sorted = [...problem.trucks].sort((a, b) => holds(b) - holds(a) || size(b) - size(a));
  const least = Math.max(1, bound.trucks, sorted.filter((each) => holds(each) > 0).length);
  // Once a load is known, one truck fewer is still tried now and then.
  const from = Math.max(least, round < 6 || round % 4 === 0 ? least : most);
  for (let count = Math.min(from, most); count <= most; count++) yield sorted.slice(0, count);
}

function fill(
  search: Search,
  trucks: readonly Truck[],
  beam: number,
  round: number,
  seen: Map<string, TruckRows>,
): ReadonlyMap<Truck, TruckRows> | undefined {
  const { problem, pieces, floor, keptOf, loaded, waived, random, isOver } = search;
  const floorOf = estimate(search, pieces);
  return fillFleet({
    trucks,
    pieces,
    floorOf,
    takenMm: (truck) => keptOf.get(truck)!.reduce((sum, { piece }) => sum + floorOf(piece), 0),
    takenKg: (truck) => keptOf.get(truck)!.reduce((sum, { piece }) => sum + piece.massKg, 0),
    random,
    shake: round > 0,
    isOver,
    pack: (truck, own) => {
      const key = `${beam} ${round % 2} ${truck.id} ${own
        .map((each) => each.id)
        .sort()
        .join(' ')}`;
      let rows = seen.get(key);
      if (!rows) {
        rows = rowsInTruck({
          problem,
          truck,
          pieces: own,
          kept: keptOf.get(truck)!,
          loaded,
          waived,
          prices: floor.prices,
          beam,
          random,
          shake: round % 2 === 1,
        });
        seen.set(key, rows);
      }
      return rows;
    },
  });
}

/** Floor that each piece needs; what may ride on top counts a part, so that all of them sum to what the bound says. */
function estimate({ problem, floor }: Search, pieces: readonly Piece[]): (piece: Piece) => number {
  const [lengthMm, widthMm] = [
    Math.max(...problem.trucks.map((each) => each.innerLengthMm)),
    Math.max(...problem.trucks.map((each) => each.innerWidthMm)),
  ];
  const alone = new Map(pieces.map((each) => [each, floor.prices.lengthOf(waysIn(each, lengthMm, widthMm))]));
  const sum = (of: readonly Piece[]) => of.reduce((total, each) => total + alone.get(each)!, 0);
  const fixed = sum(pieces.filter((each) => each.floorOnly));
  const loose = sum(pieces.filter((each) => !each.floorOnly));
  const part = loose === 0 ? 1 : Math.min(1, Math.max(0.1, (floor.usedMm - fixed) / loose));
  return (piece) => (alone.get(piece) ?? 0) * (piece.floorOnly ? 1 : part);
}

function answerOf(search: Search, filled: ReadonlyMap<Truck, TruckRows>): RowsAnswer {
  const used = [...filled.values()].filter((each) => each.space && each.space.placed.length > 0);
  const trucks = used.map((each) => truckAnswer(each.space!, each.order));
  const leftOver = search.tooLarge.map((each) => ({ id: each.id, reason: tooLarge(each) }));
  const bound = leftOver.length === 0 ? search.bound : { trucks: 0, usedLengthMm: 0, reason: 'not all pieces ride: no bound is claimed' };
  const isLeast = leftOver.length === 0 && trucks.length <= bound.trucks && usedLength(trucks) <= bound.usedLengthMm;
  const total = (of: (causes: LengthCauses) => number) => used.reduce((sum, each) => sum + of(each.causes), 0);
  const causes = {
    inRowsMm: total((each) => each.inRowsMm),
    atStopsMm: total((each) => each.atStopsMm),
    freeMm: total((each) => each.freeMm),
    floorMm: total((each) => each.floorMm),
  };
  return { status: isLeast ? 'optimal' : 'feasible', trucks, leftOver, bound, causes };
}

const usedLength = (trucks: TruckPackAnswer['trucks']): number => trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);

const isShorter = (a: TruckPackAnswer, b: TruckPackAnswer): boolean =>
  a.trucks.length < b.trucks.length || (a.trucks.length === b.trucks.length && usedLength(a.trucks) < usedLength(b.trucks));

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
