import type { KeepOptions, TruckCaseData, TruckPackAnswer } from '../case/index.js';
import { verifyTruckPack } from './verify-truck-pack.js';

/** The one place that every answer leaves through: checked against its case, with what the checker finds wrong as `mismatch`. Rules that kept placements break by themselves are no mismatch. */
export function onDuty<A extends TruckPackAnswer>(problem: TruckCaseData, answer: A, options: KeepOptions = {}): A {
  if (answer.refused) return answer;
  const mismatch = verifyTruckPack(problem, answer, options);
  return mismatch.length === 0 ? answer : { ...answer, mismatch };
}
