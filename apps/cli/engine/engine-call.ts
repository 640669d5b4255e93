import type { BadInput, Result } from '#kernel';

/** How much an engine may do: `work` in units of its own (its usual amount where nothing is said); `seconds` only cap. */
export interface EngineLimits {
  readonly work: number | undefined;
  readonly seconds: number;
}

/** Answers one case of an engine (formats: README, "Case files"). */
export type EngineCall = (input: unknown, limits: EngineLimits) => Result<unknown, readonly BadInput[]>;
