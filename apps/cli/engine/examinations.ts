import { type BadInput, type Result, ok } from '#kernel';
import { readExaminationsCase, solveExaminations } from '#inspection-calendar';

/** Reads and answers an examinations case. */
export function answer(input: unknown): Result<unknown, readonly BadInput[]> {
  const read = readExaminationsCase(input);
  return read.ok ? ok(solveExaminations(read.value)) : read;
}
