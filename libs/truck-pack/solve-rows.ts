import { seededRandom } from '#kernel';
import { boundOf, floorUse } from './bound/index.js';
import {
  type KeepOptions,
  type Truck,
  type TruckCase,
  type TruckCaseData,
  type Violation,
  Work,
  type WorkLimits,
  couldRide,
  leftOver,
  violation,
} from './case/index.js';
import { onDuty, verifyKept } from './check/index.js';
import { type Found, type RowsAnswer, type Search, answerOf, ended, isShorter, noBound, searchRound } from './fleet/index.js';
import { type TruckRows, rowsInTruck } from './rows/index.js';
import { keptIn } from './space/index.js';

export interface RowLimits extends KeepOptions, WorkLimits {
  readonly seed: number;
  /** Rounds of search, each wider than the one before; equal seed, rounds and work give the equal load. */
  readonly rounds: number;
  /** Told the part that is done, 0 to 1. */
  readonly onProgress?: (part: number) => void;
}

/**
 * Loads built by hand: rows straight across the truck from the nose, what comes off last first. A row takes pieces of one place in the unloading order, and of
 * the next only when nothing of the first is left; so every row can be unloaded before the one behind it. What is kept stays, and the rest is planned around it.
 * undefined where nothing is kept and rows do not hold all pieces inside the limits; with something kept the rest is left over with a reason.
 */
export function solveRows(problem: TruckCase, limits: RowLimits = { seed: 1, rounds: 1 }): RowsAnswer | undefined {
  const answer = searchInRows(problem, limits, new Work(limits));
  return answer && onDuty(problem, answer, limits);
}

/** The same for a part of a case, counting on, with its bounds where they are known; its answer is not checked yet. */
export function searchInRows(problem: TruckCaseData, limits: RowLimits, work: Work, known?: Bounds): RowsAnswer | undefined {
  const refused = verifyKept(problem, limits);
  if (refused.length > 0) return refusal(problem, limits, refused);
  const search = searchFor(problem, limits, work, known);
  const answer = improve(search, limits) ?? (search.keptOf.size > 0 && limits.kept?.length ? withLeftOver(search) : undefined);
  return answer && limits.waived ? { ...answer, waived: limits.waived } : answer;
}

type Bounds = Pick<Search, 'floor' | 'bound'>;

function searchFor(problem: TruckCaseData, { kept = [], waived, seed }: RowLimits, work: Work, known?: Bounds): Search {
  const byId = new Map(problem.pieces.map((each) => [each.id, each]));
  const keptIds = new Set(kept.map((each) => each.id));
  const isRiding = (piece: TruckCaseData['pieces'][number]) => keptIds.has(piece.id) || couldRide(piece, problem.trucks);
  const riding = problem.pieces.filter(isRiding);
  const floor = known?.floor ?? floorUse(problem, riding);
  return {
    problem,
    pieces: riding.filter((each) => !keptIds.has(each.id)),
    tooLarge: problem.pieces.filter((each) => !isRiding(each)),
    floor,
    bound: known?.bound ?? boundOf(problem, riding, floor),
    keptOf: new Map(problem.trucks.map((truck) => [truck, keptIn(truck, byId, kept)])),
    loaded: new Set(kept.flatMap((each) => (each.loaded ? [each.id] : []))),
    waived: new Set(waived),
    random: seededRandom(seed),
    work,
    pack: rowsInTruck,
  };
}

function refusal(problem: TruckCaseData, { waived }: KeepOptions, refused: readonly Violation[]): RowsAnswer {
  return {
    status: 'feasible',
    trucks: [],
    leftOver: problem.pieces.map((piece) => leftOver(piece, { code: 'kept-breaks-rule' })),
    stoppedBy: 'proof',
    work: 0,
    bound: { trucks: 0, usedLengthMm: 0, why: { code: 'nothing-planned' } },
    refused,
    ...(waived ? { waived } : {}),
  };
}

/** Rounds until their number, the work, the clock or a proof ends them; a load with fewer trucks, then a shorter one, replaces the best. */
function improve(search: Search, { rounds, onProgress }: RowLimits): RowsAnswer | undefined {
  const seen = new Map<string, TruckRows>();
  let best: Found | undefined;
  for (let round = 0; round < rounds && best?.answer.status !== 'optimal' && !search.work.isOver; round++) {
    const found = searchRound(search, round, seen, best);
    if (found && (!best || isShorter(found.answer, best.answer))) best = found;
    seen.clear();
    onProgress?.((round + 1) / rounds);
  }
  onProgress?.(1);
  return best && { ...withReasons(best.answer, best.filled), ...ended(search.work, best.answer.status === 'optimal') };
}

/** The answer with the reason of each row. */
function withReasons(answer: RowsAnswer, filled: Found['filled']): RowsAnswer {
  const why = new Map([...filled].map(([truck, rows]) => [truck.id, rows.why]));
  return { ...answer, trucks: answer.trucks.map((each) => ({ ...each, rows: why.get(each.id)?.() ?? [] })) };
}

/** What rows take truck by truck beside what is kept; a truck that is outside a limit gives pieces away until it is inside. */
function withLeftOver(search: Search): RowsAnswer {
  const { problem, keptOf } = search;
  const filled = new Map<Truck, TruckRows>();
  const outside: Violation[] = [];
  let rest = search.pieces;
  for (const truck of problem.trucks) {
    const rows = rowsBeside(search, truck, rest);
    filled.set(truck, rows);
    if (rows.outsideKg > 0) {
      const ids = keptOf.get(truck)!.map((each) => each.piece.id);
      outside.push(violation('limit', 'kept-outside', truck.id, ids));
    }
    const inside = new Set(rows.space?.placed.map((each) => each.piece));
    rest = rest.filter((each) => !inside.has(each));
  }
  if (outside.length > 0) return refusal(problem, {}, outside);
  const answer = withReasons(answerOf(search, filled), filled);
  return {
    ...answer,
    status: 'feasible',
    leftOver: [...answer.leftOver, ...rest.map((piece) => leftOver(piece, { code: 'no-place-beside-kept' }))],
    ...ended(search.work, false),
    bound: noBound,
  };
}

/** Fewer and fewer of the pieces beside what is kept in the truck, until they are inside every limit; still outside where not even what is kept alone is inside. */
function rowsBeside({ problem, keptOf, loaded, waived, floor, random }: Search, truck: Truck, pieces: Search['pieces']): TruckRows {
  for (let own = pieces; ; own = own.slice(0, Math.floor(own.length * 0.9))) {
    const [kept, { prices }] = [keptOf.get(truck)!, floor];
    // However much was used up before: what is kept is answered for. The sizes below bound it.
    const work = new Work();
    const rows = rowsInTruck({
      problem,
      truck,
      pieces: own,
      kept,
      loaded,
      waived,
      prices,
      beam: 6,
      nodes: 250,
      work,
      random,
      shake: false,
    });
    own = own.filter((each) => !rows.over.includes(each));
    if ((rows.space && rows.outsideKg === 0) || own.length === 0) return rows;
  }
}
