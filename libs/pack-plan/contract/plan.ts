import type { PlainDate } from '#kernel';
import type {
  CartException,
  Code,
  Finding,
  JudgedFact,
  MoveReason,
  ReasonAgainst,
  Section,
  ShortageFact,
  Subject,
  Weight,
  Whereabouts,
} from '#trade';
import type { HardwareResult } from './hardware-result.js';
import type { Checked } from './mismatch.js';
import type { PicksResult } from './picks-result.js';
import type { TruckResult } from './truck-result.js';

export type * from './picks-result.js';
export type * from './truck-result.js';
export type { Working } from './working.js';

/** Something said: as data, which everything that decides reads, and in the words that people were shown. */
export interface Said<Fact> {
  /** null where an earlier version kept the words alone. */
  readonly fact: Fact | null;
  readonly sentence: string;
}

/** A finding of which an earlier version kept its words: what it is about is known, its figures are not. */
export interface LandedFinding {
  readonly code: Code;
  readonly subjects: { readonly about: readonly Subject[] };
  readonly numbers: Record<never, never>;
  readonly date: PlainDate | null;
}

/** One thing the plan has to say, in the words it was made with: the fact first, the remedy second. */
export interface ToldFinding {
  readonly code: Code;
  readonly weight: Weight;
  readonly section: Section;
  /** What it is about, for people. */
  readonly subject: string;
  readonly date: PlainDate | null;
  readonly sentence: string;
  readonly fact: Finding | LandedFinding;
}

// ---- 1 carts ---------------------------------------------------------------------------------------------------------

export interface PlannedBox {
  /** Place in the cart, 1 at the top of the stack. */
  readonly slot: number;
  /** Place in the hang, 1 at the top. */
  readonly position: number;
  readonly model: string;
  /** null when no box could be found for this place. */
  readonly serial: string | null;
  readonly splayDeg: number;
  /** Where the splay above this box is set; the first box of a hang hangs from the grid. */
  readonly splaySet: 'in the cart' | 'at the point' | 'to the grid';
  /** Position of the box at which that splay is set, 0 for the grid; null where the plan does not say. */
  readonly splaySetAtPosition: number | null;
}

export interface CartLoad {
  /** Made of the hang's id and the places: "Main left 5-8". */
  readonly id: string;
  /** The same for people, by the hang's name. */
  readonly name: string;
  readonly hang: string;
  readonly hangName: string;
  /** 1 for the first cart of its hang, and how many there are. */
  readonly number: number;
  readonly of: number;
  readonly cart: string | null;
  readonly cartModel: string | null;
  readonly capacity: number;
  readonly boxes: readonly PlannedBox[];
  /** Frames that ride on top of the box of a position, each with its mass and what it adds to the height. */
  readonly frames?: readonly { readonly model: string; readonly position: number; readonly massKg: number; readonly onCartMm: number }[];
  /** With cart and frames. */
  readonly massKg: number;
  readonly exceptions: readonly Said<CartException>[];
}

export interface BoxMove {
  readonly number: number;
  readonly box: string;
  /** A cart's id, or "floor". */
  readonly from: string;
  readonly to: string;
  readonly why: string;
  /** Why, as data; plans of earlier releases keep the words alone. */
  readonly fact?: MoveReason;
  /** Moves of one round do not wait for one another. */
  readonly round: number;
}

export interface Stack {
  readonly cart: string;
  readonly capacity: number;
  /** Serials, top first. */
  readonly boxes: readonly string[];
  /** Out of service or promised elsewhere: boxes may be lifted off it, it carries nothing. */
  readonly givesOnly?: true;
  /** What stands below those boxes, from the first that the other tour holds: out of reach. */
  readonly beneath?: readonly string[];
}

export interface CartsResult extends Checked {
  readonly status: 'optimal' | 'feasible' | 'infeasible';
  readonly boxMoves: number;
  /** No plan has fewer box moves than this. */
  readonly bound: number;
  /** Why the search ended; what says `clock` may come out otherwise on another run. Plans of earlier releases say nothing. */
  readonly stoppedBy?: 'proof' | 'work' | 'clock';
  /** What the checker of the box moves found: where it says anything the plan must not be used. */
  readonly mismatch?: readonly Readonly<Record<string, string | number>>[];
  readonly loads: readonly CartLoad[];
  readonly moves: readonly BoxMove[];
  readonly floorBefore: { readonly carts: readonly Stack[]; readonly loose: readonly string[] };
  readonly floorAfter: { readonly carts: readonly Stack[]; readonly loose: readonly string[] };
  /** `serial`: a place wants this very box. */
  readonly short: readonly {
    readonly model: string;
    readonly missing: number;
    readonly serial?: string;
    readonly code?: 'too few' | 'not here' | 'unusable' | 'wanted twice';
  }[];
  readonly reason: string | null;
  readonly fact: readonly ShortageFact[] | null;
  /** What was looked at after the number of moves, in this order, and what came of it. */
  readonly wishes: readonly { readonly name: string; readonly value: number; readonly unit: string }[];
  /** Boxes of the design that cannot fly: quarantined, out of date, promised elsewhere; with the reason. */
  readonly leftOut: readonly {
    readonly serial: string;
    readonly model: string;
    readonly reason: string;
    readonly fact: ReasonAgainst | null;
  }[];
}

// ---- 5 due -----------------------------------------------------------------------------------------------------------

export type DueState = 'in date throughout' | 'falls due' | 'overdue' | 'no record' | 'blocked' | 'failed';

export interface DueItem {
  readonly item: string;
  readonly kind: string;
  readonly model: string;
  /** Where it hangs or rides in this plan. */
  readonly where: string;
  readonly fact: Whereabouts | null;
  readonly dueOn: PlainDate | null;
  readonly state: DueState;
  readonly lastExaminedOn: PlainDate | null;
  readonly intervals: readonly string[];
  readonly sentence: string;
  /** The same as data; plans of earlier releases keep the words alone. */
  readonly judged?: JudgedFact;
}

export interface DueResult extends Checked {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly showDays: readonly PlainDate[];
  readonly items: readonly DueItem[];
  readonly visits: {
    readonly count: number;
    readonly days: readonly { readonly on: PlainDate; readonly items: readonly string[] }[];
    readonly cannotBeSaved: readonly string[];
  };
  readonly caution: string;
}

// ---- the plan --------------------------------------------------------------------------------------------------------

/** The five results of one show, with what they were made from. Frozen when released as a revision. */
export interface PackPlan {
  readonly tour: { readonly id: string; readonly name: string; readonly from: PlainDate; readonly to: PlainDate; readonly depot: string };
  readonly show: {
    readonly id: string;
    readonly name: string;
    readonly venue: string;
    readonly from: PlainDate;
    readonly to: PlainDate;
    readonly number: number;
    readonly of: number;
  };
  /** Hash of the inputs by part: a plan whose inputs changed is stale, and says which part. */
  readonly fingerprint: Readonly<Record<string, string>>;
  readonly carts: CartsResult;
  readonly picks: PicksResult;
  readonly hardware: HardwareResult;
  readonly truck: TruckResult;
  readonly due: DueResult;
  readonly findings: readonly ToldFinding[];
  /** Items the plan counts on: what is booked when it is released. `count` for a batch. */
  readonly uses: readonly { readonly item: string; readonly count: number | null }[];
}
