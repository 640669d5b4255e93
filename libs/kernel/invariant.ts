/** Throws when a condition that the code guarantees does not hold: a bug, never bad input. */
export function invariant(condition: unknown, sentence: string): asserts condition {
  if (!condition) throw new Error(`invariant: ${sentence}`);
}
