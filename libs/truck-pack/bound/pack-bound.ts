import type { LengthBound, LoadBoundFact, TrucksBound } from '#trade';
import { type Piece, type Truck, type TruckCaseData, headroomOf, waysIn } from '../case/index.js';
import { type FloorUse, floorUse } from './floor-bound.js';
import { mostPayloadKg } from './most-payload.js';

/** A proven least number of trucks and least length, and what proves it; for loads in which every one of these pieces rides. */
export interface PackBound {
  readonly trucks: number;
  readonly usedLengthMm: number;
  readonly why: LoadBoundFact;
}

/**
 * Least trucks by mass (payload and what the axles leave of it), volume, floor length, floor width and dual-feasible functions; least length by the floor that is used up along
 * the truck, volume and the longest piece. Each compares with the best of the trucks, so none exceeds what any load attains. Every piece must fit some truck.
 */
export function boundOf(
  problem: Pick<TruckCaseData, 'trucks' | 'minSupport'>,
  pieces: readonly Piece[],
  floor: FloorUse = floorUse(problem, pieces),
): PackBound {
  if (pieces.length === 0)
    return { trucks: 0, usedLengthMm: 0, why: { code: 'proved', trucks: { code: 'nothing' }, length: { code: 'nothing' } } };
  const { trucks } = problem;
  const massKg = sum(pieces, (each) => each.massKg);
  const volume = sum(pieces, (each) => each.lengthMm * each.widthMm * each.heightMm);
  const counts: [number, TrucksBound][] = [
    [countToHold(trucks.map(mostPayloadKg), massKg), { code: 'mass', massKg }],
    [
      countToHold(
        trucks.map((each) => each.innerLengthMm * each.innerWidthMm * headroomOf(each)),
        volume,
      ),
      { code: 'volume' },
    ],
    [
      countToHold(
        trucks.map((each) => each.innerLengthMm - startOf(each)),
        floor.usedMm,
      ),
      { code: 'floor-across' },
    ],
    [
      countToHold(
        trucks.map((each) => each.innerWidthMm),
        floorUse(problem, pieces, true).usedMm,
      ),
      { code: 'floor-along' },
    ],
    [functionCount(problem, pieces), { code: 'functions' }],
  ];
  const [least, why] = greatest(counts);
  const section = Math.max(...trucks.map((truck) => truck.innerWidthMm * headroomOf(truck)));
  const [lengthMm, widthMm] = [Math.max(...trucks.map((each) => each.innerLengthMm)), Math.max(...trucks.map((each) => each.innerWidthMm))];
  const shortest = (piece: Piece) => waysIn(piece, lengthMm, widthMm).reduce((mm, { along }) => Math.min(mm, along), Infinity);
  const longest = pieces.map(shortest).reduce((mm, each) => (Number.isFinite(each) ? Math.max(mm, each) : mm), 0);
  const starts = trucks.map(startOf).sort((a, b) => a - b);
  const blockedMm = sum(starts.slice(0, Math.max(1, least)), (each) => each);
  const lengths: [number, LengthBound][] = [
    [
      Math.ceil(floor.usedMm - 1e-6) + (floor.usedMm > 0 ? blockedMm : 0),
      { code: 'floor-across', blockedMm: floor.usedMm > 0 ? blockedMm : 0 },
    ],
    [Math.ceil(volume / section - 1e-6), { code: 'volume' }],
    [longest, { code: 'longest-piece' }],
  ];
  const [length, whyLength] = greatest(lengths);
  return { trucks: Math.max(1, least), usedLengthMm: length, why: { code: 'proved', trucks: why, length: whyLength } };
}

const greatest = <T>(values: readonly (readonly [number, T])[]): readonly [number, T] => values.reduce((a, b) => (b[0] > a[0] ? b : a));

/** How many of the largest hold the total; all of them and one where they do not. */
function countToHold(sizes: readonly number[], total: number): number {
  let [held, count] = [0, 0];
  for (const size of [...sizes].sort((a, b) => b - a)) {
    if (held >= total - 1e-6) break;
    held += size;
    count++;
  }
  return count;
}

/** From the nose: what is blocked from wall to wall on the floor, where nothing can stand. */
function startOf(truck: Truck): number {
  let start = 0;
  for (let moved = true; moved; ) {
    const next = truck.blocked.find(
      (each) =>
        each.xMm <= start &&
        each.xMm + each.lengthMm > start &&
        each.zMm <= 0 &&
        each.zMm + each.heightMm > 0 &&
        each.yMm <= 0 &&
        each.yMm + each.widthMm >= truck.innerWidthMm,
    );
    moved = next !== undefined;
    if (next) start = next.xMm + next.lengthMm;
  }
  return Math.min(start, truck.innerLengthMm);
}

/** One-dimensional dual-feasible functions of sizes in [0, 1] (Fekete and Schepers): sizes that fit together never sum to more than 1. */
const functions: ((size: number) => number)[] = [
  (size) => size,
  ...[0.2, 0.25, 0.3, 1 / 3, 0.4, 0.45, 0.5].map((e) => (size: number) => (size > 1 - e + 1e-12 ? 1 : size < e - 1e-12 ? 0 : size)),
  ...[1, 2, 3, 4, 5].map((k) => (size: number) => {
    const scaled = (k + 1) * size;
    return Math.abs(scaled - Math.round(scaled)) < 1e-9 ? size : Math.floor(scaled) / k;
  }),
];

/** Trucks that what must stand on the floor needs, by products of two functions, each piece in its cheapest turn, against the longest and the widest truck. */
function functionCount({ trucks }: Pick<TruckCaseData, 'trucks'>, pieces: readonly Piece[]): number {
  const [lengthMm, widthMm] = [Math.max(...trucks.map((each) => each.innerLengthMm)), Math.max(...trucks.map((each) => each.innerWidthMm))];
  const shapes = new Map<string, { ways: ReturnType<typeof waysIn>; count: number }>();
  for (const piece of pieces) {
    if (!piece.floorOnly) continue;
    const key = `${piece.lengthMm} ${piece.widthMm} ${piece.mayTurn}`;
    const shape = shapes.get(key);
    if (shape) shape.count++;
    else shapes.set(key, { ways: waysIn(piece, lengthMm, widthMm), count: 1 });
  }
  let most = 0;
  for (const ofLength of functions)
    for (const ofWidth of functions) {
      let used = 0;
      for (const { ways, count } of shapes.values()) {
        if (ways.length === 0) continue;
        used += count * Math.min(...ways.map(({ along, across }) => ofLength(along / lengthMm) * ofWidth(across / widthMm)));
      }
      most = Math.max(most, Math.ceil(used - 1e-6));
    }
  return most;
}

const sum = <T>(values: readonly T[], of: (value: T) => number): number => values.reduce((total, each) => total + of(each), 0);
