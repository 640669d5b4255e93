/** What a solver of linear integer programs must offer; HiGHS stands behind it at the edge. */
export interface IntegerProgramSolver {
  /** `lpText` is in the common LP text format; an answer always comes by the time limit. */
  solve(lpText: string, options: { readonly timeLimitSeconds: number; readonly relaxed?: boolean }): IntegerProgramAnswer;
}

export interface IntegerProgramAnswer {
  readonly status: 'optimal' | 'infeasible' | 'feasible' | 'unknown';
  /** Value of the best solution found, where there is one. */
  readonly objective: number | undefined;
  /** Proven bound on the objective (equal to it when optimal); undefined when none is known. */
  readonly bound: number | undefined;
  readonly values: ReadonlyMap<string, number>;
}
