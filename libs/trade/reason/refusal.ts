import type { PlainDate } from '#kernel';
import type { ReasonAgainst } from './reason-against.js';

/** Somebody else's promise in the way. */
export interface Clash {
  readonly item: string;
  readonly tour: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/** Why something may not be done. */
export type Refusal =
  | { readonly code: 'release-clashes'; readonly show: string; readonly clash: Clash }
  | { readonly code: 'release-stale' }
  /** A better plan that the house found earlier. */
  | { readonly code: 'offer-stale' }
  | { readonly code: 'release-barred' }
  | { readonly code: 'release-says-stop'; readonly stops: number }
  /** Stops of dates, ratings or places are answered by the safety officer alone. */
  | { readonly code: 'release-needs-officer'; readonly stops: number }
  | { readonly code: 'hold-clashes'; readonly name: string; readonly clash: Clash }
  | { readonly code: 'swap-breaks-rules'; readonly truck: string; readonly first: number; readonly second: number }
  | { readonly code: 'swap-out-of-turn'; readonly truck: string; readonly first: number; readonly second: number }
  | { readonly code: 'trucks-cannot-be-loaded' }
  | TourRefusal;

/** Why a tour is not planned as a whole. */
export type TourRefusal =
  | { readonly code: 'tour-too-short'; readonly shows: number }
  /** Shows are to stay as they are, and there is no plan of them, or fewer shows. */
  | { readonly code: 'tour-nothing-to-keep'; readonly shows: number }
  /** A show that is to stay wants something else by now; `boxes`: those that must not fly there. */
  | { readonly code: 'tour-not-as-kept'; readonly show: string; readonly load: string | null; readonly boxes: readonly string[] }
  /** `carts`: how many are missing. */
  | {
      readonly code: 'tour-show-not-served';
      readonly show: string;
      readonly models: readonly { readonly model: string; readonly missing: number }[];
      readonly carts: number;
    }
  | { readonly code: 'tour-fails-its-check'; readonly fault: string };

/** Why a step may not be ticked yet, or not be taken back. */
export type TickRefusal =
  | { readonly code: 'unknown-step' }
  | { readonly code: 'not-released'; readonly show: string }
  | { readonly code: 'going-up-open'; readonly open: number }
  | { readonly code: 'hold-open'; readonly step: string }
  | { readonly code: 'only-read'; readonly step: string }
  | { readonly code: 'later-ticked' }
  /** The steps of a rigging system that nobody approved are an example, not for use. */
  | { readonly code: 'system-not-approved'; readonly system: string }
  /** On the way up and out nothing goes on with what must not fly. */
  | { readonly code: 'barred'; readonly items: readonly { readonly item: string; readonly why: ReasonAgainst }[] };

/** Why a box move may not be taken back. `from` and `to` are carts' ids, or "floor". */
export type MoveBackRefusal = { readonly box: string; readonly from: string; readonly to: string } & (
  | { readonly code: 'not-moved' }
  /** Something was done since with a cart of the move, or with its box. */
  | { readonly code: 'moved-since'; readonly later: string }
  | { readonly code: 'read-anew' }
);
