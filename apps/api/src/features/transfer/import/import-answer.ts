import type { CsvImport } from '../csv-import.js';
import { type FaultGroup, groupedFaults } from './grouped-faults.js';

/** What is kept of how an import went: all figures, and the first of each kind. */
export interface ImportAnswer {
  readonly rows: number;
  readonly added: number;
  readonly changed: number;
  readonly unchanged: number;
  /** Of examinations alone. */
  readonly failed?: number;
  readonly firstFailed?: readonly string[];
  readonly waiting: number;
  readonly faulty: number;
  readonly firstAdded: readonly string[];
  readonly firstChanged: readonly { readonly id: string; readonly what: string }[];
  readonly firstWaiting: readonly string[];
  readonly faults: readonly FaultGroup[];
}

const mostNamed = 30;
const mostGroups = 50;

export function answerOf({ rows, added, changed, unchanged, failed, waits, faults }: CsvImport): ImportAnswer {
  return {
    rows,
    ...{ added: added.length, changed: changed.length, unchanged, waiting: waits.length, faulty: faults.length },
    ...(failed ? { failed: failed.length, firstFailed: failed.slice(0, mostNamed) } : {}),
    firstAdded: added.slice(0, mostNamed),
    firstChanged: changed.slice(0, mostNamed).map(({ id, what }) => ({ id, what })),
    firstWaiting: waits.slice(0, mostNamed).map(({ sentence }) => sentence),
    faults: groupedFaults(faults).slice(0, mostGroups),
  };
}
