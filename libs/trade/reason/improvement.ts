/** What became of a list of box moves whose search was stopped before anything was proved. `moves`: of the plan in hand; `atLeast`: proved. */
export type ImprovementFact =
  | { readonly code: 'going-on'; readonly moves: number; readonly atLeast: number }
  | { readonly code: 'shorter'; readonly moves: number; readonly shorter: number; readonly atLeast: number }
  | { readonly code: 'proved'; readonly moves: number }
  | { readonly code: 'not-shorter'; readonly moves: number; readonly atLeast: number }
  /** Inputs or floor were no longer those of the plan. */
  | { readonly code: 'overtaken' }
  | { readonly code: 'broken-off'; readonly moves: number; readonly atLeast: number };
