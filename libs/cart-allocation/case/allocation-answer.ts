export interface BoxMoveAnswer {
  readonly box: string;
  /** A cart's id or "floor". */
  readonly from: string;
  readonly to: string;
}

/** Boxes that are short: `too few` of a model, or one pinned serial that is not on this floor, must not fly, or is wanted in two places. */
export interface BoxShortage {
  readonly model: string;
  readonly missing: number;
  readonly serial?: string;
  readonly code: 'too few' | 'not here' | 'unusable' | 'wanted twice';
}

/** Carts that are short: no cart may carry this load, or no cart is left for it. */
export interface CartShortage {
  readonly code: 'no cart may carry it' | 'no cart is left';
  readonly load: string;
  readonly loads: number;
  readonly carts: number;
}

/** Why a search ended. `clock`: it was cut off, and a calmer machine may give another answer; else equal case and work give the equal answer. */
export type StoppedBy = 'proof' | 'work' | 'clock';

export interface AllocationAnswer {
  readonly status: 'optimal' | 'feasible' | 'infeasible';
  readonly boxMoves: number;
  /** No plan has fewer box moves. */
  readonly bound: number;
  readonly stoppedBy: StoppedBy;
  /** Serials top first. */
  readonly assignments: readonly { readonly load: string; readonly cart: string; readonly boxes: readonly string[] }[];
  readonly moves: readonly BoxMoveAnswer[];
  /** Infeasible: what is short. */
  readonly short?: readonly BoxShortage[];
  readonly cartsShort?: CartShortage;
  readonly reason?: 'boxes short' | 'carts short';
  /** `work`: units that the search took. */
  readonly measures: { readonly cartsTouched: number; readonly work: number };
}
