import type { Checked } from './mismatch.js';
import type { AxleName, BridgeFact, FreightFact, LeftOverReason, LoadBoundFact, LoadBreach, LoadingWish, RowChoiceFact } from '#trade';
import type { Working } from './working.js';

export interface Placement {
  readonly id: string;
  /** What the loader calls it, for example "Main left, 1st cart". */
  readonly label: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm: number;
  readonly turned: boolean;
  /** As placed: along x, across y, up z. */
  readonly alongMm: number;
  readonly acrossMm: number;
  readonly heightMm: number;
  readonly massKg: number;
  readonly firstOff: number;
  readonly group: string | null;
  /** What people called the group when the plan was made; earlier plans have its id alone. */
  readonly groupName?: string;
  /** Travels, but must not fly: quarantined freight on its way home. */
  readonly tag: string | null;
  readonly fact: FreightFact;
}

/** What people call the group of a piece. */
export const groupOf = ({ groupName, group, label }: Pick<Placement, 'groupName' | 'group' | 'label'>): string =>
  groupName ?? group ?? label;

export interface TruckRow {
  /** Left out where the load is not in rows, or was made before reasons were kept. */
  readonly choice?: RowChoiceFact;
  readonly number: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly pieces: readonly string[];
  readonly label: string;
  readonly massKg: number;
  /** Where the bar or strap goes, from the nose; null when the row stands against the next. */
  readonly barAtMm: number | null;
  /** What is left across the truck. */
  readonly gapAcrossMm: number;
  /** What is left between this row and the one before it, or the nose; plans made before this was stated have none. */
  readonly gapAheadMm?: number;
}

export interface AxleLoad {
  readonly axle: string;
  /** Of plans that kept the name alone as well: their names are known. */
  readonly fact: AxleName;
  readonly loadKg: number;
  readonly limitKg: number | null;
  readonly share: number | null;
  /** Highest of this axle after any unloading stop. */
  readonly worstAfterStopsKg: number;
  readonly working?: Working;
}

/** What a truck carries when `off` has come off, with all that came off before; `off` null: the whole load. */
export interface AxleStop {
  readonly off: string | null;
  readonly massKg: number;
  readonly sideOffsetMm: number;
  readonly sideLimitMm: number | null;
  readonly loads: readonly {
    readonly axle: string;
    readonly loadKg: number;
    readonly limitKg: number | null;
    readonly leastKg: number | null;
    readonly verdict: 'within' | 'over' | 'too light' | 'no limit on file';
    readonly fact: AxleName;
  }[];
}

/** What is on an axle while the truck is loaded. */
export interface AxleInRow {
  readonly axle: AxleName;
  readonly loadKg: number;
  readonly limitKg: number | null;
}

/** The bridge formula for every run of consecutive axles, counted from the front. */
export interface BridgeCheck {
  readonly status: 'within' | 'over' | 'not on file';
  readonly rule: string;
  readonly source: string;
  readonly groups: readonly {
    readonly first: number;
    readonly last: number;
    readonly spanFt: number;
    readonly loadLb: number;
    readonly limitLb: number;
    readonly isOver: boolean;
  }[];
  readonly sentence: string;
  readonly fact: BridgeFact | null;
}

/** What the load of a container or pallet as a whole is compared with. */
export interface StowageFigures {
  /** The most on any metre of the length, each piece spread evenly along its own, and where that metre begins. */
  readonly heaviestMetreKg: number;
  readonly heaviestMetreFromMm: number;
  readonly mostKgPerMetre: number | null;
  /** Of the load's centre from the middle of the length, positive toward the door. */
  readonly endOffsetMm: number;
  readonly mostEndOffsetMm: number | null;
  readonly mostSideOffsetMm: number | null;
}

export interface TruckResultOne {
  readonly id: string;
  /** Left out: a truck in rows. What is stowed without rows has, as rows, the steps of stowing in their order. */
  readonly kind?: 'sea container' | 'air pallet';
  /** Of those kinds. */
  readonly stowage?: StowageFigures;
  readonly model: string;
  readonly innerLengthMm: number;
  readonly innerWidthMm: number;
  readonly innerHeightMm: number;
  readonly doorHeightMm: number;
  readonly placements: readonly Placement[];
  readonly rows: readonly TruckRow[];
  readonly loadingOrder: readonly string[];
  readonly unloadingOrder: readonly string[];
  readonly usedLengthMm: number;
  readonly massKg: number;
  readonly payloadKg: number;
  readonly sideOffsetMm: number;
  readonly axles: readonly AxleLoad[];
  readonly working: Working;
  // Plans that were made before these were worked out have none of them.
  /** The whole load first, then after each stop but the last. */
  readonly stops?: readonly AxleStop[];
  /** After the first row, after the second, and so on. */
  readonly afterRows?: readonly (readonly AxleInRow[])[];
  /** null where no rule of the tour asks for it. */
  readonly bridge?: BridgeCheck | null;
  /** What goes in first when the show comes down. */
  readonly loadOutOrder?: readonly string[];
  /** Pieces that stay where they are because somebody wants it; `loaded` ones are in the truck. */
  readonly kept?: readonly { readonly piece: string; readonly loaded: boolean }[];
}

/** What people at the dock asked for, as the plan took it up; `without effect` where it could not. */
export interface LoadingNote {
  readonly kind: 'kept' | 'waived' | 'taken' | 'end' | 'without effect';
  readonly subject: string;
  readonly sentence: string;
  readonly fact: LoadingWish | null;
}

export interface TruckResult extends Checked {
  readonly status: 'optimal' | 'feasible';
  readonly trucks: readonly TruckResultOne[];
  readonly leftOver: readonly {
    readonly id: string;
    readonly label: string;
    readonly reason: string;
    readonly fact: LeftOverReason | null;
  }[];
  /** `fact`: plans of earlier releases keep the words alone. */
  readonly bound: { readonly trucks: number; readonly usedLengthMm: number; readonly reason: string; readonly fact?: LoadBoundFact };
  readonly caution: string;
  /** Which truck goes to the dock first: the one that holds what comes off first. At the load-out backwards. */
  readonly dockOrder?: readonly { readonly truck: string; readonly first: string }[];
  readonly notes?: readonly LoadingNote[];
  /** Rules that are broken by what is to stay where it stands; nothing was planned then. */
  readonly refused?: readonly {
    readonly piece: string;
    readonly sentence: string;
    /** Plans of earlier releases keep the words alone. */
    readonly name?: string;
    readonly fact?: LoadBreach;
  }[];
}

/** What holds for all trucks. */
export type TrucksHead = Omit<TruckResult, 'trucks'>;
