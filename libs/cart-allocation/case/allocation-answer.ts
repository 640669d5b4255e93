export interface BoxMoveAnswer {
  readonly box: string;
  /** A cart's id or "floor". */
  readonly from: string;
  readonly to: string;
}

export interface AllocationAnswer {
  readonly status: 'optimal' | 'feasible' | 'infeasible';
  readonly boxMoves: number;
  readonly bound: number;
  /** Serials top first. */
  readonly assignments: readonly { readonly load: string; readonly cart: string; readonly boxes: readonly string[] }[];
  readonly moves: readonly BoxMoveAnswer[];
  readonly short?: readonly { readonly model: string; readonly missing: number; readonly serial?: string }[];
  readonly reason?: string;
  readonly measures: { readonly cartsTouched: number };
}
