import type { AxleLoads } from './axle-loads.js';
import type { Violation } from './violation.js';

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
  readonly leftOver: readonly { readonly id: string; readonly reason: string }[];
  readonly bound: { readonly trucks: number; readonly usedLengthMm: number; readonly reason: string };
  /** Pieces for which a user waived the unloading order. */
  readonly waived?: readonly string[];
  /** Rules that the kept placements break by themselves; nothing is planned then. */
  readonly refused?: readonly Violation[];
}
