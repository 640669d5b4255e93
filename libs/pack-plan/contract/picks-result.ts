import type { Checked } from './mismatch.js';
import type { CannotHang, LiftRemedy, StageFact } from '#trade';
import type { Comparison } from './comparison.js';
import type { LiftCase } from './lift-case.js';
import type { PickKit, SiteResult } from './site-result.js';
import type { RoomResult } from './room-result.js';
import type { Working } from './working.js';

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
  /** Who said what its anchor may carry. */
  readonly structureBy?: string;
}

/** Loads of one pick at one moment. */
export interface WorstLoads {
  readonly reactionN: number;
  readonly hookLoadKg: number;
  readonly pointLoadN: number;
  readonly pointLoadDynamicN: number;
  /** For example "Main left 5-8, swung back". */
  readonly at: string;
  readonly fact: StageFact;
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
  readonly alone: {
    readonly tiltDownDeg: number;
    readonly hookLoadKg: number;
    readonly pointLoadN: number;
    /** Where the regime asks for it. */
    readonly comparisons?: readonly Comparison[];
  } | null;
  /** Before the line of a pull-back is taken up, or when it lets go; null without one. */
  readonly withoutLine: { readonly hookLoadKg: number; readonly pointLoadN: number; readonly pointLoadDynamicN: number } | null;
  /** The worst of all moments of lifting, hanging and with its line, and which that is; null where no moments were computed. */
  readonly worst: WorstLoads | null;
  /** What the inclined chain pulls its point aside with, and toward which (stage plan); 0 where it hangs straight. */
  readonly asideN: number;
  readonly asideDeg: number | null;
  /** The most that its chain pulls its point aside with while it is lifted; left out where no moment inclines it, and in plans made before. */
  readonly mostAside?: { readonly newtons: number; readonly directionDeg: number; readonly inclineDeg: number; readonly at: StageFact };
  /** Steel of all legs of its bridle; left out where it has none. */
  readonly bridleKg?: number;
  readonly bridle: { readonly legs: readonly LegResult[]; readonly reason: string | null; readonly fact?: CannotHang } | null;
  /** What lifts there, and by whom; left out in plans made before it was listed. */
  readonly kit?: PickKit;
  readonly structureBy?: string;
  readonly beam?: string;
  readonly comparisons: readonly Comparison[];
  /** Smallest of each kind on file that is enough here; null where none is, and null as a whole in plans made before this was looked up. */
  readonly enough: { readonly hoist: string | null; readonly shackle: string | null; readonly sling: string | null } | null;
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

/** One moment of building the hang or taking it down. */
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
    readonly fact: { readonly most: StageFact; readonly least: StageFact } | null;
    /** Of all moments what the inclined chain pulls its point aside with, forward positive, and by how far it inclines. */
    /** Moments at which its chain inclines by more than counts as vertical, which pulls its shackles aside. */
    readonly inclined?: readonly { readonly reactionN: number; readonly inclineDeg: number; readonly at: StageFact }[];
    readonly aside?: { readonly newtons: number; readonly inclineDeg: number; readonly at: StageFact };
  }[];
  /** Joints whose front pins are pushed at some moment, negative newtons each; null where the plan does not say. */
  readonly pushed: readonly { readonly position: number; readonly leastFrontPinN: number; readonly at: StageFact }[] | null;
  /**
   * The moment of lifting at which the grid stands furthest beyond the working tilt of its system, nose down positive, with its limit, or without one where a hang
   * on one pick has a system that says none; left out otherwise.
   */
  readonly tilted?: {
    readonly tiltDeg: number;
    readonly at: StageFact;
    readonly limitDeg: number | null;
    readonly tailLineN: number | null;
  };
  /** What would make it liftable; left out where it is. */
  readonly remedies?: readonly LiftRemedy[];
  /** Lock pins that are drawn in the air while they hold their joint; left out in earlier plans. */
  readonly lockPins?: readonly { readonly position: number; readonly newtons: number; readonly at: StageFact }[];
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
  readonly fact?: CannotHang;
  /** Where its anchor is: on the stage plan, and above the floor; left out in plans made before that was said. */
  readonly anchor?: { readonly stage: { readonly xMm: number; readonly yMm: number } | null; readonly heightMm: number };
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
  /** Who said what its anchor may be pulled with. */
  readonly structureBy?: string;
  readonly comparisons: readonly Comparison[];
}

/** A moment that a step passes through: what load cells at the hooks should read then, and what pulls. */
export interface StepFact {
  readonly moment: string;
  readonly tiltDownDeg: number;
  readonly cells: readonly { readonly hole: string; readonly hookLoadKg: number }[];
  /** The level force at the foot of the lowest box that holds the load aside, and how far it is turned back. */
  readonly held: { readonly newtons: number; readonly turnedDeg: number } | null;
  /** What the rear link above a box carries before it is drawn (pulled positive), and its moment about the front pins: what kicks. */
  readonly kick: {
    readonly position: number;
    readonly linkN: number;
    readonly newtonMetres: number;
    /** Drawn while the load hangs: how far it swings, and what its two front pins then carry together; left out in earlier plans. */
    readonly swing?: { readonly turnsDeg: number; readonly pinsN: number };
  } | null;
}

export interface RunningOrderStep {
  /** What it is ticked by: the text of its key (tick-key.ts). */
  readonly key: string;
  readonly text: string;
  /** Nothing after it begins before it is ticked; holds alone are ticked, the other steps are read. */
  readonly hold: boolean;
  readonly why?: string;
  readonly facts?: readonly StepFact[];
  readonly load: { readonly id: string; readonly cart: string | null; readonly splays: string } | null;
}

/** The rig's lift sequence for one hang; without approval an example that is not for use. */
export interface RunningOrder {
  readonly manual: string | null;
  readonly approved: string | null;
  readonly goingUp: readonly RunningOrderStep[];
  readonly comingDown: readonly RunningOrderStep[];
}

export interface HangResult extends Checked {
  /** Its id: what keys and links use. */
  readonly hang: string;
  /** What people called it when the plan was made. */
  readonly name: string;
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
  /** What its stages were computed from; left out where none were, and in plans made before they were drawn. */
  readonly lift?: LiftCase;
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
  /** null in plans made before heights were compared. */
  readonly room: RoomResult | null;
  readonly stage: { readonly xMm: number; readonly yMm: number; readonly azimuthDeg: number } | null;
}

export interface PicksResult {
  readonly hangs: readonly HangResult[];
  readonly loadRule: {
    readonly id: string;
    readonly jurisdiction: string;
    readonly title: string;
    readonly edition: string | null;
    /** Tells its values apart from those of every other edition, also where its name was left; left out in earlier plans. */
    readonly contentMark?: string;
    /** Where it lets more pass than published figures, in words; left out in earlier plans. */
    readonly belowPublished?: readonly string[];
    readonly source: string;
    readonly status: string;
    readonly dynamicFactor: number;
    readonly usableShare: number;
    /** How far a load cell may read from the computed value, as a share of it; null where the regime says nothing. */
    readonly readingTolerance: number | null;
  };
  /** What holds for the place; left out in plans made before it was said. */
  readonly site?: SiteResult;
  readonly caution: string;
}

/** What holds for all hangs. */
export type PicksHead = Omit<PicksResult, 'hangs'>;
