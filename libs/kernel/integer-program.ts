/** What a solver of linear integer programs must offer; HiGHS stands behind it at the edge. */
export interface IntegerProgramSolver {
  /** `lpText` is in the common LP text format; least is wanted. An answer always comes by the limits. */
  solve(lpText: string, limits: IntegerProgramLimits): IntegerProgramAnswer;
}

export interface IntegerProgramLimits {
  /** Only a cap: an answer cut off by it may differ from run to run, and says so. */
  readonly timeLimitSeconds: number;
  /** Iterations of the simplex method, all nodes together: equal program and limit give the equal answer. Left out: no limit. */
  readonly iterations?: number;
  /** A solution below this value is good enough: the search ends with it, and its status is `feasible` unless it is proved to be the best. */
  readonly enough?: number;
  /** Columns need not be whole. */
  readonly relaxed?: boolean;
}

export interface IntegerProgramAnswer {
  readonly status: 'optimal' | 'infeasible' | 'feasible' | 'unknown';
  /** Value of the best solution found, where there is one. */
  readonly objective: number | undefined;
  /** Proven bound on the objective (equal to it when optimal); undefined when none is known. */
  readonly bound: number | undefined;
  readonly values: ReadonlyMap<string, number>;
  /** Of a relaxed program solved to its end: what a unit of each column would add to the objective. */
  readonly reducedCosts?: ReadonlyMap<string, number>;
  /** Iterations made. */
  readonly iterations: number;
  /** The clock cut it off. */
  readonly isCutOff: boolean;
}
