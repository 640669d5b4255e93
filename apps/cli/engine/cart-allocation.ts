import { readAllocationCase, solveAllocation } from '#cart-allocation';
import { loadIntegerProgramSolver } from '#runtime';
import type { EngineCall } from './engine-call.js';

export async function engine(): Promise<EngineCall> {
  const integerProgram = await loadIntegerProgramSolver();
  return (input, { work, seconds }) => {
    const read = readAllocationCase(input);
    return read.ok
      ? { ok: true, value: solveAllocation(read.value, { work, timeLimitSeconds: seconds, now: () => performance.now(), integerProgram }) }
      : read;
  };
}
