import { type BadInput, type Result, ok } from '#kernel';
import { readExaminationsCase, solveExaminations } from '#inspection-calendar';
import { english, tell } from '#words';

/** Reads and answers an examinations case. */
export function answer(input: unknown): Result<unknown, readonly BadInput[]> {
  const read = readExaminationsCase(input);
  if (!read.ok) return read;
  const { items, visits } = solveExaminations(read.value);
  return ok({ items: items.map((each) => ({ ...each, because: tell(english.dueCauses, each.because) })), visits });
}
