import type { TruckCase } from './truck-case.js';
import type { Violation } from './violation.js';

/** A placement that planning leaves exactly as it is: a pinned row, or what is already loaded. Millimetres as in an answer. */
export interface KeptPlacement {
  readonly truck: string;
  readonly id: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm: number;
  readonly turned: boolean;
  /** It stands in the truck already: nothing is planned where it would have to pass it. */
  readonly loaded?: boolean;
}

/** What a user has decided: placements that stay, and pieces for which the unloading order is waived. */
export interface KeepOptions {
  readonly kept?: readonly KeptPlacement[];
  /** Ids of pieces that may stand in the way of others, and others in theirs. */
  readonly waived?: readonly string[];
}

/** Ids that the case does not know, or that are kept twice. */
export function unknownKept(problem: TruckCase, { kept = [], waived = [] }: KeepOptions): Violation[] {
  const found: Violation[] = [];
  const pieces = new Set(problem.pieces.map((each) => each.id));
  const trucks = new Set(problem.trucks.map((each) => each.id));
  const seen = new Set<string>();
  for (const { id, truck } of kept) {
    if (!pieces.has(id)) found.push({ code: 'unknown-piece', subject: id, sentence: 'is kept in its place but is no piece of the case' });
    if (!trucks.has(truck)) found.push({ code: 'unknown-truck', subject: truck, sentence: `is no truck of the case; ${id} is kept in it` });
    if (seen.has(id)) found.push({ code: 'count', subject: id, sentence: 'is kept in two places' });
    seen.add(id);
  }
  for (const id of waived)
    if (!pieces.has(id))
      found.push({ code: 'unknown-piece', subject: id, sentence: 'has its unloading order waived but is no piece of the case' });
  return found;
}
