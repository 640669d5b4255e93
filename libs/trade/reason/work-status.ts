import type { ReasonAgainst } from './reason-against.js';

/** What is to be said of a work list. `isProved`: no list from this floor is shorter. */
export type WorkFinding =
  | { readonly code: 'done' }
  | { readonly code: 'as-planned'; readonly moves: number; readonly bound: number }
  | { readonly code: 'anew'; readonly moves: number; readonly bound: number }
  | {
      readonly code: 'must-not-fly';
      readonly boxes: readonly { readonly box: string; readonly load: string; readonly why: ReasonAgainst }[];
    }
  | { readonly code: 'boxes-gone'; readonly boxes: readonly string[] }
  | { readonly code: 'cannot-be-built' }
  | { readonly code: 'failed-its-check' }
  | { readonly code: 'between-shows'; readonly moves: number; readonly bound: number };

/** Why a load is built otherwise than at the show before. */
export type RestackReason =
  | { readonly code: 'new-load'; readonly load: string }
  | { readonly code: 'other-models'; readonly wanted: readonly string[]; readonly before: readonly string[] }
  | { readonly code: 'other-boxes'; readonly boxes: readonly (string | null)[] };
