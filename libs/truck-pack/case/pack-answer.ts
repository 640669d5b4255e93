import type { LoadBoundFact } from '#trade';
import type { AxleLoads } from './axle-loads.js';
import type { LeftOver } from './left-over.js';
import type { Violation } from './violation.js';
import type { StoppedBy } from './work.js';

export interface PlacementAnswer {
  readonly id: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm: number;
  readonly turned: boolean;
}

/** Why a row stands where it does. Lengths in millimetres. */
export interface RowChoice {
  readonly code: /** Stays by wish. */
    | 'kept'
    /** Loses least of its depth of all rows that could stand there. */
    | 'least-lost'
    /** Another would lose less there, and the whole load came out longer with it. */
    | 'shorter-later'
    /** No other row could stand there. */
    | 'only';
  readonly fromMm: number;
  readonly toMm: number;
  readonly ids: readonly string[];
  /** Which stops' pieces it holds. */
  readonly stops: readonly { readonly firstOff: number; readonly pieces: number }[];
  /** Depth beyond what its pieces use up of the floor. */
  readonly lostMm: number;
  /** What the next best row at that place would have cost in length beyond this one; left out where there is none. */
  readonly nextBestMm?: number;
  /** Free space ahead of it, for the axles or behind what is blocked or kept. */
  readonly freeAheadMm: number;
  /** Places toward the door (below 0: the nose) that it was moved among rows of its stop, for the axles. */
  readonly movedRows: number;
  /** Its lanes were exchanged or moved across, for the balance. */
  readonly isLevelled: boolean;
}

export interface TruckAnswer {
  readonly id: string;
  readonly placements: readonly PlacementAnswer[];
  readonly loadingOrder: readonly string[];
  readonly usedLengthMm: number;
  readonly massKg: number;
  /** Of the load's centre from the middle, positive toward the right wall of someone who looks in from the door. */
  readonly sideOffsetMm: number;
  readonly axles: AxleLoads;
  /** Of loads in rows, from the nose. */
  readonly rows?: readonly RowChoice[];
}

export interface TruckPackAnswer {
  readonly status: 'optimal' | 'feasible';
  readonly trucks: readonly TruckAnswer[];
  readonly leftOver: readonly LeftOver[];
  /** Equal inputs, seed and work give the equal answer unless it says `clock`. */
  readonly stoppedBy: StoppedBy;
  /** Steps of search that were counted. */
  readonly work: number;
  readonly bound: { readonly trucks: number; readonly usedLengthMm: number; readonly why: LoadBoundFact };
  /** Pieces for which a user waived the unloading order. */
  readonly waived?: readonly string[];
  /** Rules that the kept placements break by themselves; nothing is planned then. */
  readonly refused?: readonly Violation[];
  /** What the checker finds wrong with this answer: a fault of the search, never of the case. Left out where it agrees. */
  readonly mismatch?: readonly Violation[];
}
