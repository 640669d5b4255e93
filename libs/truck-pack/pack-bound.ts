import type { Piece, TruckCase } from './truck-case.js';

/** A proven least number of trucks and least length, and what proves it; for loads in which every one of these pieces rides. */
export interface PackBound {
  readonly trucks: number;
  readonly usedLengthMm: number;
  readonly reason: string;
}

/** Mass, volume and floor of the pieces against the best of the trucks. Floor: pieces on which nothing may stand and which stand on nothing need floor of their own. */
export function boundOf({ trucks }: Pick<TruckCase, 'trucks'>, pieces: readonly Piece[]): PackBound {
  if (pieces.length === 0) return { trucks: 0, usedLengthMm: 0, reason: 'nothing to load' };
  const massKg = sum(pieces, (each) => each.massKg);
  const volume = sum(pieces, (each) => each.lengthMm * each.widthMm * each.heightMm);
  const floor = sum(
    pieces.filter((each) => standsAlone(each, pieces)),
    (each) => each.lengthMm * each.widthMm,
  );
  const usable = (height: boolean) =>
    trucks.map((truck) => truck.innerLengthMm * truck.innerWidthMm * (height ? heightOf(truck) : 1)).sort((a, b) => b - a);
  const counts: [number, string][] = [
    [
      countToHold(
        trucks.map((truck) => truck.payloadKg ?? Infinity).sort((a, b) => b - a),
        massKg,
      ),
      `mass: ${Math.round(massKg)} kg`,
    ],
    [countToHold(usable(true), volume), 'volume'],
    [countToHold(usable(false), floor), 'floor of what stands alone'],
  ];
  const [least, why] = counts.reduce((a, b) => (b[0] > a[0] ? b : a));
  const widest = Math.max(...trucks.map((truck) => truck.innerWidthMm));
  const section = Math.max(...trucks.map((truck) => truck.innerWidthMm * heightOf(truck)));
  const shortest = Math.max(...pieces.map((each) => (each.mayTurn ? Math.min(each.lengthMm, each.widthMm) : each.lengthMm)));
  const lengths: [number, string][] = [
    [Math.ceil(floor / widest - 1e-9), 'floor of what stands alone, by the width of the truck'],
    [Math.ceil(volume / section - 1e-9), 'volume, by the cross-section of the truck'],
    [shortest, 'longest piece'],
  ];
  const [length, whyLength] = lengths.reduce((a, b) => (b[0] > a[0] ? b : a));
  return { trucks: Math.max(1, least), usedLengthMm: length, reason: `trucks by ${why}; length by ${whyLength}` };
}

/** Nothing may stand on it and it stands on the floor: its base is floor that nothing else uses. */
function standsAlone(piece: Piece, pieces: readonly Piece[]): boolean {
  const lightest = Math.min(...pieces.map((each) => each.massKg));
  const nothingOnTop = piece.maxOnTopKg !== undefined && piece.maxOnTopKg < lightest;
  return piece.floorOnly && nothingOnTop;
}

function countToHold(sizes: readonly number[], total: number): number {
  let [held, count] = [0, 0];
  while (held < total - 1e-6 && count < sizes.length) held += sizes[count++]!;
  return count;
}

const heightOf = (truck: TruckCase['trucks'][number]): number => Math.min(truck.innerHeightMm, truck.doorHeightMm ?? Infinity);
const sum = <T>(values: readonly T[], of: (value: T) => number): number => values.reduce((total, each) => total + of(each), 0);
