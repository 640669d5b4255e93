import type { TruckCaseData } from './truck-case.js';
import { type Violation, violation } from './violation.js';

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
export function unknownKept(problem: TruckCaseData, { kept = [], waived = [] }: KeepOptions): Violation[] {
  const found: Violation[] = [];
  const pieces = new Set(problem.pieces.map((each) => each.id));
  const trucks = new Set(problem.trucks.map((each) => each.id));
  const seen = new Set<string>();
  for (const { id, truck } of kept) {
    if (!pieces.has(id)) found.push(violation('unknown-piece', 'kept', id));
    if (!trucks.has(truck)) found.push(violation('unknown-truck', 'kept', truck, [id]));
    if (seen.has(id)) found.push(violation('count', 'kept-twice', id));
    seen.add(id);
  }
  for (const id of waived) if (!pieces.has(id)) found.push(violation('unknown-piece', 'waived', id));
  return found;
}
