import type { ReasonAgainst } from './reason-against.js';

/** What rides: a case of the register or a cart of the show, and which items inside it must not fly. */
export interface FreightFact {
  readonly isCase: boolean;
  readonly inside: readonly string[];
  /** Why the case itself must not be used; plans of before do not say. */
  readonly against?: ReasonAgainst;
}

/** Why the packing engine leaves a piece over. */
export type NoPlace =
  /** Higher than door and roof of every truck. */
  | { readonly code: 'too-high'; readonly heightMm: number; readonly mostMm: number }
  /** Larger or heavier than any truck takes. */
  | {
      readonly code: 'too-large';
      readonly lengthMm: number;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly massKg: number;
    }
  /** Beside the others, inside the limits, no place was found. */
  | { readonly code: 'no-place' }
  /** In rows beside what is kept, inside the limits, no place was found. */
  | { readonly code: 'no-place-beside-kept' }
  /** Every truck is over an axle limit before anything is in it. */
  | { readonly code: 'trucks-over-empty' }
  /** Nothing is planned: what is kept breaks a rule. */
  | { readonly code: 'kept-breaks-rule' };

/** Why a piece finds no place. */
export type LeftOverReason =
  | NoPlace
  /** `trucks`: those of the tour, with what speaks against each; earlier plans do not say. */
  | { readonly code: 'no-truck'; readonly trucks?: readonly { readonly truck: string; readonly why: ReasonAgainst }[] }
  /** Somebody at the dock says so. */
  | { readonly code: 'stays-behind'; readonly reason: string; readonly by: string; readonly on: string }
  /** A figure on file with which nothing can be planned. */
  | { readonly code: 'bad-figure'; readonly field: string; readonly value: string; readonly wanted: string }
  /** Plans of earlier releases keep the words of the packing engine alone. */
  | { readonly code: 'engine-says'; readonly says: string };
