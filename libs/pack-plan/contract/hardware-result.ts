import type { PlainDate } from '#kernel';
import type { LearnedLosses, Pooling } from '#hardware-count';
import type { Checked } from './mismatch.js';
import type { ReasonAgainst, Whereabouts } from '#trade';
import type { Working } from './working.js';

export interface HardwareLine {
  readonly key: string;
  readonly item: string;
  readonly model: string;
  readonly size: string | null;
  /** Pieces that hang or hold a cart together; spares are none of them. */
  readonly fitted: number;
  /** Pieces that ride with boxes, carts, and loose; with the box 1 of a hang also those that are not fitted (`staysInBox`). */
  readonly withBox: number;
  readonly withCart: number;
  readonly loose: number;
  readonly staysInBox: number;
  /** withBox + withCart + loose - staysInBox - fitted. */
  readonly difference: number;
  /** Cases that hold what is loose and the spares. */
  readonly trunks: readonly string[];
  readonly takenFrom: readonly { readonly lot: string; readonly trunk: string | null; readonly count: number }[];
  /** How many ride with which cart load. */
  readonly carriers: readonly { readonly load: string; readonly cart: string | null; readonly count: number }[];
  readonly spares: number;
  /** The service level wanted of this line alone, and the one that this number of spares really gives; null where no losses are on file. */
  readonly levelWanted: number | null;
  readonly levelReached: number | null;
  /** Spares for one stock together, and in all for a stock of each hang or of each leg. */
  readonly pooling: Pooling | null;
  readonly learned: (LearnedLosses & { readonly sparesByPriorAlone: number }) | null;
  /** Mass (kg) or cost of one, as the trunk is weighed; null where none is on file. */
  readonly weightEach: number | null;
  /** Fewest on hand on any day of the tour, what others hold taken off. */
  readonly onHand: number;
  /** Of those, with boxes and carts that stay at the depot. */
  readonly keptAtHome: number;
  /** Pieces that travel and spares that the stock does not cover, and the days. */
  readonly missing: number;
  readonly shortOn: { readonly from: PlainDate; readonly to: PlainDate } | null;
  /** Lots of the model that may not be used, with the reason. */
  readonly outOfUse: readonly {
    readonly lot: string;
    readonly count: number;
    readonly reason: string;
    readonly fact: ReasonAgainst | null;
  }[];
  readonly unit: string;
  readonly working: Working;
}

export interface TrunkResult {
  readonly wanted: number | null;
  readonly least: 'mass' | 'cost';
  /** Chance that no line runs short on the tour, all lines together; null where no losses are on file. */
  readonly level: number | null;
  readonly weight: number;
  /** No choice that reaches the level weighs or costs less than this. */
  readonly bound: number;
  readonly equalShareWeight: number;
  readonly status: 'optimal' | 'feasible';
  /** One sentence: what was wanted, what the chosen spares weigh or cost, and how that is proved. */
  readonly sentence: string;
}

/** The chain of one hoist: hook down to the floor below the point, and what is in the bag at trim. */
export interface ChainResult {
  readonly hang: string;
  readonly hangName: string;
  readonly hole: string;
  readonly hoist: string;
  readonly serial: string | null;
  readonly onFileM: number;
  readonly neededM: number;
  /** null: the height of the points is not on file, and the chain is compared with the trim height only. */
  readonly pointHeightMm: number | null;
  readonly inBagAtTrimM: number | null;
  readonly enough: boolean;
}

export interface HardwareResult extends Checked {
  readonly lines: readonly HardwareLine[];
  readonly trunk: TrunkResult;
  readonly chains: readonly ChainResult[];
  /** Serial-numbered lifting items chosen, by hang and pick; spare hoists among them. */
  readonly chosen: readonly {
    readonly item: string;
    readonly kind: string;
    readonly model: string;
    readonly where: string;
    readonly fact: Whereabouts | null;
  }[];
  /** Pins that the models put with the boxes and carts of the depot, against what is on file as kept with them. */
  readonly keptWithBoxes: readonly { readonly model: string; readonly byModels: number; readonly onFile: number }[];
  readonly caution: string;
}
