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

export interface TruckAnswer {
  readonly id: string;
  readonly placements: readonly PlacementAnswer[];
  readonly loadingOrder: readonly string[];
  readonly usedLengthMm: number;
  readonly massKg: number;
  /** Of the load's centre from the middle, positive toward the right wall of someone who looks in from the door. */
  readonly sideOffsetMm: number;
  readonly axles: AxleLoads;
}

export interface TruckPackAnswer {
  readonly status: 'optimal' | 'feasible';
  readonly trucks: readonly TruckAnswer[];
  readonly leftOver: readonly LeftOver[];
  /** Equal inputs, seed and work give the equal answer unless it says `clock`. */
  readonly stoppedBy: StoppedBy;
  /** Steps of search that were counted. */
  readonly work: number;
  readonly bound: { readonly trucks: number; readonly usedLengthMm: number; readonly reason: string };
  /** Pieces for which a user waived the unloading order. */
  readonly waived?: readonly string[];
  /** Rules that the kept placements break by themselves; nothing is planned then. */
  readonly refused?: readonly Violation[];
  /** What the checker finds wrong with this answer: a fault of the search, never of the case. Left out where it agrees. */
  readonly mismatch?: readonly Violation[];
}
