import { type BadInput, type Result, ok } from '#kernel';
import { readSparesCase, solveSpares } from '#hardware-count';

/** Reads and answers a spares case. */
export function answer(input: unknown): Result<unknown, readonly BadInput[]> {
  const read = readSparesCase(input);
  return read.ok ? ok(solveSpares(read.value)) : read;
}
