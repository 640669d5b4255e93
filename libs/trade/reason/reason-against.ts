import type { PlainDate } from '#kernel';

/** Why an item may not be used. `remark` is what a person wrote of its state. */
export type ReasonAgainst =
  | { readonly code: 'not-on-file' }
  | { readonly code: 'state'; readonly state: string; readonly remark: string | null }
  /** It, or its model, waits for the safety officer. */
  | { readonly code: 'not-accepted'; readonly of: 'item' | 'model' }
  /** Kit of others of which nobody has seen the paper, and which the safety officer has not cleared. */
  | { readonly code: 'paper-missing'; readonly owner: string | null }
  | { readonly code: 'given-back'; readonly owner: string | null; readonly on: PlainDate }
  | { readonly code: 'other-depot'; readonly depot: string; readonly wanted: string }
  | { readonly code: 'promised'; readonly to: string; readonly from: PlainDate; readonly until: PlainDate }
  | { readonly code: 'hired'; readonly from: PlainDate; readonly until: PlainDate }
  | { readonly code: 'no-record' }
  | { readonly code: 'failed' }
  | { readonly code: 'blocked' }
  | { readonly code: 'out-of-date'; readonly dueOn: PlainDate }
  /** Visited places, ISO 3166 codes, without examination rules and without an answer whose rules hold there. */
  | { readonly code: 'not-judged'; readonly places: readonly string[] };

/** What keeps a box back on one day. */
export type KeptBack =
  | { readonly code: 'state'; readonly state: string }
  | { readonly code: 'not-accepted'; readonly of: 'item' | 'model' }
  | { readonly code: 'paper-missing'; readonly owner: string | null }
  | { readonly code: 'given-back'; readonly owner: string | null; readonly on: PlainDate }
  | { readonly code: 'other-depot'; readonly depot: string }
  | { readonly code: 'hired'; readonly from: PlainDate; readonly until: PlainDate }
  | { readonly code: 'promised'; readonly to: string }
  | { readonly code: 'examination'; readonly state: string };
