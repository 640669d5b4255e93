import type { Piece, Truck } from '../case/index.js';

/** A way for a piece of a kind to stand. */
interface SmallWay {
  readonly along: number;
  readonly across: number;
  readonly turned: boolean;
  /** Where its left side may be, as cells of the grid, and how many cells it spans from each. */
  readonly places: readonly { readonly from: number; readonly to: number }[];
}

/** Pieces that are alike on the floor: one base, one place in the unloading order. */
export interface SmallKind {
  readonly pieces: readonly Piece[];
  readonly ways: readonly SmallWay[];
  readonly areaMm2: number;
}

/** The floor in cells across, between places where a side can be; kinds level by level, last off first. */
export interface SmallFloor {
  readonly levels: readonly (readonly SmallKind[])[];
  readonly cells: readonly number[];
  readonly widthMm: number;
  readonly areaMm2: number;
  /** Lengths that a load can have: sums of what may stand one behind another, up to the truck's, ascending. */
  readonly lengths: readonly number[];
}

/**
 * Pushed together, a load has each piece's left side at a sum of widths of others, and its end at a sum of lengths: pairs beside one another stay so, and pairs
 * behind one another are no more than before, so the unloading order holds as well. Only such places are looked at.
 */
export function smallFloor(truck: Truck, pieces: readonly Piece[]): SmallFloor {
  const levels = [...new Set(pieces.map((each) => each.firstOff))].sort((a, b) => b - a);
  const waysOf = (piece: Piece) =>
    [
      { along: piece.lengthMm, across: piece.widthMm, turned: false },
      ...(piece.mayTurn && piece.lengthMm !== piece.widthMm ? [{ along: piece.widthMm, across: piece.lengthMm, turned: true }] : []),
    ].filter((each) => each.across <= truck.innerWidthMm && each.along <= truck.innerLengthMm);
  const sides = sumsOf(
    pieces.map((each) => waysOf(each).map((way) => way.across)),
    truck.innerWidthMm,
  );
  const edges = new Set([0, truck.innerWidthMm]);
  for (const piece of pieces)
    for (const { across } of waysOf(piece)) for (const y of sides) if (y + across <= truck.innerWidthMm) edges.add(y).add(y + across);
  const grid = [...edges].sort((a, b) => a - b);
  const at = new Map(grid.map((each, index) => [each, index]));
  const kindsOf = (level: number): SmallKind[] => {
    const alike = new Map<string, Piece[]>();
    for (const piece of pieces.filter((each) => each.firstOff === level)) {
      const key = `${piece.lengthMm} ${piece.widthMm} ${piece.mayTurn}`;
      alike.set(key, [...(alike.get(key) ?? []), piece]);
    }
    return [...alike.values()].map((own) => ({
      pieces: own,
      areaMm2: own[0]!.lengthMm * own[0]!.widthMm,
      ways: waysOf(own[0]!).map((way) => ({
        ...way,
        places: sides.flatMap((y) => (y + way.across <= truck.innerWidthMm ? [{ from: at.get(y)!, to: at.get(y + way.across)! }] : [])),
      })),
    }));
  };
  return {
    levels: levels.map(kindsOf),
    cells: grid.slice(1).map((each, index) => each - grid[index]!),
    widthMm: truck.innerWidthMm,
    areaMm2: pieces.reduce((sum, each) => sum + each.lengthMm * each.widthMm, 0),
    lengths: sumsOf(
      pieces.map((each) => waysOf(each).map((way) => way.along)),
      truck.innerLengthMm,
    ),
  };
}

/** Every sum up to `most` of one choice from each of some of the lists, ascending; 0 among them. */
function sumsOf(lists: readonly (readonly number[])[], most: number): number[] {
  let sums = new Set([0]);
  for (const list of lists) {
    const more = new Set(sums);
    for (const sum of sums) for (const each of list) if (sum + each <= most) more.add(sum + each);
    sums = more;
  }
  return [...sums].sort((a, b) => a - b);
}
