/** What proves the least number of trucks. */
export type TrucksBound =
  | { readonly code: 'nothing' }
  | { readonly code: 'mass'; readonly massKg: number }
  | { readonly code: 'volume' }
  /** Floor that pieces side by side, or one behind the other, can really fill. */
  | { readonly code: 'floor-across' }
  | { readonly code: 'floor-along' }
  /** Dual-feasible functions of length and width. */
  | { readonly code: 'functions' };

/** What proves the least length. */
export type LengthBound =
  | { readonly code: 'nothing' }
  | { readonly code: 'floor-across'; readonly blockedMm: number }
  | { readonly code: 'volume' }
  | { readonly code: 'longest-piece' };

/** Why no load can do with less; where none is claimed, why not. */
export type LoadBoundFact =
  | { readonly code: 'proved'; readonly trucks: TrucksBound; readonly length: LengthBound }
  | { readonly code: 'not-all-ride' }
  | { readonly code: 'nothing-planned' }
  | { readonly code: 'no-truck' }
  | { readonly code: 'bad-figure' };
