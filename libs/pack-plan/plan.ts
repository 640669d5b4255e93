import type { PlainDate } from '#kernel';
import type { HardwareResult } from './hardware-result.js';
import type { Working } from './working.js';

export type { Working };

/** How much a finding weighs: nothing to do, look at this, stop. Shown as ring, half ring, filled square, with the word. */
export type Weight = 'agrees' | 'look' | 'stop';

/** Which of the five results (or the inputs) a finding stands beside. */
export type Section = 'picks' | 'carts' | 'hardware' | 'truck' | 'due' | 'inputs';

/** One thing the plan has to say: what it is about, on which day, in one sentence, the fact first, the remedy second. */
export interface Finding {
  readonly code: string;
  readonly weight: Weight;
  readonly section: Section;
  readonly subject: string;
  readonly date: PlainDate | null;
  readonly sentence: string;
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
}

export interface CartLoad {
  /** For example "Main left 5-8". */
  readonly id: string;
  readonly hang: string;
  /** 1 for the first cart of its hang, and how many there are. */
  readonly number: number;
  readonly of: number;
  readonly cart: string | null;
  readonly cartModel: string | null;
  readonly capacity: number;
  readonly boxes: readonly PlannedBox[];
  /** With cart. */
  readonly massKg: number;
  readonly exceptions: readonly string[];
}

export interface BoxMove {
  readonly number: number;
  readonly box: string;
  /** A cart's id, or "floor". */
  readonly from: string;
  readonly to: string;
  readonly why: string;
  /** Moves of one round do not wait for one another. */
  readonly round: number;
}

export interface Stack {
  readonly cart: string;
  readonly capacity: number;
  /** Serials, top first. */
  readonly boxes: readonly string[];
}

export interface CartsResult {
  readonly status: 'optimal' | 'feasible' | 'infeasible';
  readonly boxMoves: number;
  /** No plan has fewer box moves than this. */
  readonly bound: number;
  readonly loads: readonly CartLoad[];
  readonly moves: readonly BoxMove[];
  readonly floorBefore: { readonly carts: readonly Stack[]; readonly loose: readonly string[] };
  readonly floorAfter: { readonly carts: readonly Stack[]; readonly loose: readonly string[] };
  readonly short: readonly { readonly model: string; readonly missing: number }[];
  readonly reason: string | null;
  /** What was looked at after the number of moves, in this order, and what came of it. */
  readonly wishes: readonly { readonly name: string; readonly value: number; readonly unit: string }[];
  /** Boxes of the design that cannot fly: quarantined, out of date, promised elsewhere; with the reason. */
  readonly leftOut: readonly { readonly serial: string; readonly model: string; readonly reason: string }[];
}

// ---- 2 picks ---------------------------------------------------------------------------------------------------------

/** What a rated load is multiplied by before it is compared, and where that rule stands. */
export interface Factor {
  readonly what: string;
  readonly factor: number;
  readonly source: string;
  readonly status: string;
}

export interface Comparison {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  /** null: no rated value on file. */
  readonly limit: number | null;
  readonly verdict: 'within' | 'over' | 'no rated value on file' | 'no rule on file';
  readonly sentence: string;
  /** As it is stated, in its own unit. */
  readonly rated: { readonly value: number; readonly unit: string } | null;
  readonly factors: readonly Factor[];
}

/** A leg of a bridle, from the hook of the hoist to its anchor. */
export interface LegResult {
  /** Anchor on the stage plan, where the hang has a place there. */
  readonly stage: { readonly xMm: number; readonly yMm: number } | null;
  readonly lengthMm: number;
  readonly tensionN: number;
  readonly tensionDynamicN: number;
  readonly verticalN: number;
  readonly horizontalN: number;
  readonly fromHorizontalDeg: number;
  /** Toward which the anchor is pulled on the stage plan: 0 = along x to the audience, 90 = along y. */
  readonly directionDeg: number;
}

export interface PickResult {
  readonly hole: string;
  readonly place: 'front' | 'rear' | 'only';
  /** Name of the point, which several picks may share. */
  readonly point: string;
  readonly hoist: string;
  readonly hoistSerial: string | null;
  readonly reactionN: number;
  readonly hookLoadKg: number;
  readonly belowHookKg: number;
  readonly hoistKg: number;
  readonly chainKg: number;
  readonly pointLoadN: number;
  readonly pointLoadDynamicN: number;
  /** What this pick carries when the other goes slack, and the tilt that the hang then takes; null with one pick. */
  readonly alone: { readonly tiltDownDeg: number; readonly hookLoadKg: number; readonly pointLoadN: number } | null;
  /** Before the line of a pull-back is taken up, or when it lets go; null without one. */
  readonly withoutLine: { readonly hookLoadKg: number; readonly pointLoadN: number; readonly pointLoadDynamicN: number } | null;
  /** What the inclined chain pulls its point aside with, and toward which (stage plan); 0 where it hangs straight. */
  readonly asideN: number;
  readonly asideDeg: number | null;
  readonly bridle: { readonly legs: readonly LegResult[]; readonly reason: string | null } | null;
  readonly comparisons: readonly Comparison[];
  /** Smallest of each kind on file that is enough here; null where none is. */
  readonly enough: { readonly hoist: string | null; readonly shackle: string | null; readonly sling: string | null };
  readonly working: Working;
  /** Place on the stage plan, where the hang has one. */
  readonly stage: { readonly xMm: number; readonly yMm: number } | null;
}

export interface JointResult {
  readonly position: number;
  /** The frame that makes this joint, where boxes do not link by themselves: its joint to the box above. */
  readonly adapter: string | null;
  /** Angle of the box below, nose down. */
  readonly tiltDownDeg: number;
  /** Of what hangs below: its centre from the front pivot of the joint, forward. */
  readonly distanceMm: number;
  readonly leverMm: number;
  readonly loadN: number;
  readonly rearLinkN: number;
  readonly frontPins: { readonly xN: number; readonly zN: number };
  readonly frontPinN: number;
  readonly comparisons: readonly Comparison[];
}

/** Millimetres in the hang's side plane: x forward to the audience, z up, origin at the grid's front pivot. */
export interface Point {
  readonly xMm: number;
  readonly zMm: number;
}

export interface HangOutline {
  readonly grid: readonly Point[];
  readonly holes: readonly { readonly hole: string; readonly at: Point }[];
  readonly boxes: readonly {
    readonly position: number;
    readonly corners: readonly Point[];
    readonly frontPivot: Point;
    readonly tiltDownDeg: number;
    readonly widthMm: number;
  }[];
  readonly gridWidthMm: number;
  readonly adapters: readonly { readonly id: string; readonly corners: readonly Point[] }[];
}

/** One moment of building the hang. */
export interface StageResult {
  /** For example "Main left 5-8, front pins only". */
  readonly name: string;
  readonly tiltDownDeg: number;
  readonly massKg: number;
  readonly picks: readonly { readonly hole: string; readonly reactionN: number }[];
  readonly mostLink: { readonly position: number; readonly newtons: number };
  readonly mostFrontPin: { readonly position: number; readonly newtons: number };
}

/** The worst of all stages, and in which it stands. */
export interface EnvelopeResult {
  readonly picks: readonly {
    readonly hole: string;
    readonly mostN: number;
    readonly mostAt: string;
    readonly leastN: number;
    readonly leastAt: string;
  }[];
  readonly joints: readonly {
    readonly position: number;
    readonly adapter: string | null;
    readonly mostLinkN: number;
    readonly mostLinkAt: string;
    readonly leastLinkN: number;
    readonly leastLinkAt: string;
    readonly mostFrontPinN: number;
    readonly mostFrontPinAt: string;
  }[];
  readonly comparisons: readonly Comparison[];
}

export interface PullBackResult {
  readonly position: number;
  /** Why the hang cannot stand like this; the figures are then null. */
  readonly reason: string | null;
  readonly figures: {
    readonly tensionN: number;
    readonly anchorForwardN: number;
    readonly anchorUpN: number;
    readonly lineLengthMm: number;
    readonly lineBelowHorizontalDeg: number;
    readonly chainsInclineDeg: number;
    readonly drawnAsideMm: number;
    /** Joints whose rear link is pushed because of the line. */
    readonly reversed: readonly number[];
  } | null;
  readonly comparisons: readonly Comparison[];
}

export interface RunningOrderStep {
  /** What it is ticked by, for example "Main left up 4". */
  readonly key: string;
  readonly text: string;
  /** Nothing after it begins before it is ticked. */
  readonly hold: boolean;
  readonly load: { readonly id: string; readonly cart: string | null; readonly splays: string } | null;
}

/** The rig's running order for one hang; without approval an example that is not for use. */
export interface RunningOrder {
  readonly manual: string | null;
  readonly approved: string | null;
  readonly goingUp: readonly RunningOrderStep[];
  readonly comingDown: readonly RunningOrderStep[];
}

export interface HangResult {
  readonly hang: string;
  readonly mirrorOf: string | null;
  readonly grid: string;
  readonly gridSerial: string | null;
  readonly system: string;
  readonly systemApproved: boolean;
  readonly goesUp: number;
  readonly trimHeightMm: number;
  readonly tiltDownDeg: number;
  readonly bottomAimDownDeg: number;
  readonly massKg: number;
  readonly centreOfGravity: Point;
  readonly slackAtDeg: { readonly rearSlack: number; readonly frontSlack: number } | null;
  /** Tilts at which both picks keep the reserve of the regime, and those that the aim needs. */
  readonly tiltRange: {
    readonly reserveShare: number;
    readonly fromDeg: number;
    readonly toDeg: number;
    readonly needs: { readonly fromDeg: number; readonly toDeg: number } | null;
    readonly verdict: 'within' | 'outside';
  } | null;
  /** One pick: the tilt that each hole gives, in the order of the tilts. */
  readonly holeTilts: readonly { readonly hole: string; readonly tiltDownDeg: number }[];
  /** Every mass of the hang with the place of its centre: what the sum of moments is made of. */
  readonly masses: readonly { readonly what: string; readonly massKg: number; readonly xMm: number; readonly zMm: number }[];
  readonly picks: readonly PickResult[];
  /** More than two points in one line: the total, and no shares; `picks` is then empty. */
  readonly unshared: {
    readonly hoists: readonly { readonly hole: string; readonly hoist: string; readonly serial: string | null }[];
    readonly totalN: number;
    readonly withSteelAndHoistsN: number;
    readonly sentence: string;
  } | null;
  readonly joints: readonly JointResult[];
  readonly stages: readonly StageResult[];
  readonly envelope: EnvelopeResult | null;
  readonly pullBack: PullBackResult | null;
  readonly secondary: readonly Comparison[];
  readonly windLimitMps: number | null;
  readonly runningOrder: RunningOrder;
  readonly boxes: readonly {
    readonly position: number;
    readonly model: string;
    readonly serial: string | null;
    readonly splayDeg: number;
    readonly cart: string | null;
    readonly hangsBelowKg: number;
  }[];
  readonly outline: HangOutline;
  readonly stage: { readonly xMm: number; readonly yMm: number; readonly azimuthDeg: number } | null;
}

export interface PicksResult {
  readonly hangs: readonly HangResult[];
  readonly loadRule: {
    readonly id: string;
    readonly jurisdiction: string;
    readonly title: string;
    readonly edition: string | null;
    readonly source: string;
    readonly status: string;
    readonly dynamicFactor: number;
    readonly usableShare: number;
    /** How far a load cell may read from the computed value, as a share of it; null where the regime says nothing. */
    readonly readingTolerance: number | null;
  };
  readonly caution: string;
}

// ---- 4 truck ---------------------------------------------------------------------------------------------------------

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
  /** Travels, but must not fly: quarantined freight on its way home. */
  readonly tag: string | null;
}

export interface TruckRow {
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
  }[];
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
}

export interface TruckResultOne {
  readonly id: string;
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
}

export interface TruckResult {
  readonly status: 'optimal' | 'feasible';
  readonly trucks: readonly TruckResultOne[];
  readonly leftOver: readonly { readonly id: string; readonly label: string; readonly reason: string }[];
  readonly bound: { readonly trucks: number; readonly usedLengthMm: number; readonly reason: string };
  readonly caution: string;
  /** Which truck goes to the dock first: the one that holds what comes off first. At the load-out backwards. */
  readonly dockOrder?: readonly { readonly truck: string; readonly first: string }[];
  readonly notes?: readonly LoadingNote[];
  /** Rules that are broken by what is to stay where it stands; nothing was planned then. */
  readonly refused?: readonly string[];
}

// ---- 5 due -----------------------------------------------------------------------------------------------------------

export type DueState = 'in date throughout' | 'falls due' | 'overdue' | 'no record' | 'blocked' | 'failed';

export interface DueItem {
  readonly item: string;
  readonly kind: string;
  readonly model: string;
  /** Where it hangs or rides in this plan. */
  readonly where: string;
  readonly dueOn: PlainDate | null;
  readonly state: DueState;
  readonly lastExaminedOn: PlainDate | null;
  readonly intervals: readonly string[];
  readonly sentence: string;
}

export interface DueResult {
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
  readonly findings: readonly Finding[];
  /** Items the plan counts on: what is booked when it is released. `count` for a batch. */
  readonly uses: readonly { readonly item: string; readonly count: number | null }[];
}
