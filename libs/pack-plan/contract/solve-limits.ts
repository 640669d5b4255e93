import type { IntegerProgramSolver } from '#kernel';

/** Caps what somebody waits for: many times what the work takes, so that a busy machine plans as an idle one does. */
export const capSeconds = 900;

/**
 * What a plan may use: a clock that does not go back, the integer-program solver, and how much work. Equal inputs and equal work give the equal plan;
 * `timeLimitSeconds` is only a cap, and what it cuts off says `clock`.
 */
export interface SolveLimits {
  readonly now: () => number;
  readonly integerProgram: IntegerProgramSolver;
  readonly timeLimitSeconds: number;
  /** Units of the search for box moves (see `AllocationLimits`); the usual amount where nothing is said. */
  readonly work?: number;
  /** Orders in which the rows of a truck are tried; 1 where nothing is said. */
  readonly truckWork?: number;
  /** Told the part of the truck's work that is done, 0 to 1. */
  readonly onProgress?: (part: number) => void;
}
