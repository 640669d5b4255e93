/** What rides: a case of the register or a cart of the show, and which items inside it must not fly. */
export interface FreightFact {
  readonly isCase: boolean;
  readonly inside: readonly string[];
}

/** Why a piece finds no place. */
export type LeftOverReason =
  | { readonly code: 'no-truck' }
  /** A figure on file with which nothing can be planned. */
  | { readonly code: 'bad-figure'; readonly field: string; readonly value: string; readonly wanted: string }
  /** What the packing engine says of it. */
  | { readonly code: 'engine-says'; readonly says: string };
