import { type BadInput, type Result, ok } from '#kernel';
import { readExaminationsCase, solveExaminations } from '#inspection-calendar';
import { loadIntegerProgramSolver } from '#runtime';
import { english, tell } from '#words';
import type { EngineCall } from './engine-call.js';

/** Reads and answers an examinations case. */
export async function engine(): Promise<EngineCall> {
  const solver = await loadIntegerProgramSolver();
  return (input): Result<unknown, readonly BadInput[]> => {
    const read = readExaminationsCase(input);
    if (!read.ok) return read;
    const { items, visits } = solveExaminations(read.value, solver);
    return ok({ items: items.map((each) => ({ ...each, because: tell(english.dueCauses, each.because) })), visits });
  };
}
