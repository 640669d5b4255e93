import type { BadInput, Result } from '#kernel';

/** Answers one case of an engine (formats: README, "Case files"); `seconds` limits the search. */
export type EngineCall = (input: unknown, seconds: number) => Result<unknown, readonly BadInput[]>;
