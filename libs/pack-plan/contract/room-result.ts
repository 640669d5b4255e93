import type { HangPart, RoomPart, TrimMark } from '#trade';

/** A piece of what hangs between the mark of the trim height and the point; null where a length is not on file. */
export interface RoomPiece {
  readonly part: RoomPart;
  readonly mm: number | null;
  /** Models whose length counts here. */
  readonly models: readonly string[];
  readonly unmeasured: readonly string[];
}

/** Heights of one pick at trim, above the floor that the carts roll on. */
export interface PickRoom {
  readonly hole: string;
  readonly holeHeightMm: number;
  /** Where the lower hook of the hoist hangs. */
  readonly hookHeightMm: number;
  /** From below: what stands between the mark of the trim height and the point. */
  readonly pieces: readonly RoomPiece[];
  readonly pointHeightMm: number | null;
  /** Where the upper hook hangs: the point, or the apex of a bridle. */
  readonly apexHeightMm: number | null;
  /** Chain between hoist and lower hook: what is left of the height. Negative where it does not fit; null where no height of the point is on file. */
  readonly leftMm: number | null;
  /** From the apex to the floor. */
  readonly chainToFloorMm: number | null;
}

/** A leg of a bridle beside the steel that makes it. */
export interface LegRoom {
  readonly hole: string;
  /** Counted from 1. */
  readonly leg: number;
  readonly lengthMm: number;
  /** What its slings and shackles make, with adjusters drawn in and let out. */
  readonly shortestMm: number;
  readonly longestMm: number;
  readonly models: readonly string[];
  readonly unmeasured: readonly string[];
  readonly fits: boolean;
  /** Of a leg that does not fit: slings on file that do with its shackles, nearest first; null where none do, left out in earlier plans. */
  readonly fromStock?: { readonly slings: readonly string[]; readonly shortestMm: number; readonly longestMm: number } | null;
}

/** A loaded cart under what hangs before it, lifted as high as it goes. */
export interface RollIn {
  readonly load: string;
  readonly cartMm: number;
  /** From the floor or deck to the lowest of what hangs. */
  readonly freeMm: number;
  readonly leftMm: number;
}

/** How near two hangs come; negative where they stand in one another. */
export interface HangClearance {
  /** Ids of the two. */
  readonly hang: string;
  readonly otherHang: string;
  readonly apartMm: number;
  readonly firstPart: HangPart;
  readonly secondPart: HangPart;
}

/** The room of a hang between its points and the floor at trim. */
export interface RoomResult {
  readonly trimTo: TrimMark;
  /** The mark of the trim height in the side plane of the hang. */
  readonly markZMm: number;
  readonly lowestHeightMm: number;
  readonly deckHeightMm: number;
  readonly picks: readonly PickRoom[];
  readonly legs: readonly LegRoom[];
  /** Left out in plans made before it was computed. */
  readonly rollIns?: readonly RollIn[];
}
