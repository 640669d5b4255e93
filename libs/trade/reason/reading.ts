import type { ComparedPart } from '../comparison/index.js';

/** A load-cell reading beside what was computed. */
export type ReadingFact =
  | { readonly code: 'nothing-computed'; readonly read: CellReading }
  | {
      readonly code: 'over-allowed';
      readonly read: CellReading;
      readonly over: readonly { readonly part: ComparedPart; readonly limitKg: number }[];
    }
  | { readonly code: 'no-tolerance'; readonly read: CellReading; readonly computedKg: number; readonly differenceShare: number }
  | { readonly code: 'agrees'; readonly read: CellReading; readonly computedKg: number; readonly differenceShare: number }
  | {
      readonly code: 'beyond-tolerance';
      readonly read: CellReading;
      readonly computedKg: number;
      readonly differenceShare: number;
      readonly toleranceShare: number;
    };

/** At the hook a cell reads the hook load, above the hoist the point load. */
export interface CellReading {
  readonly readingKg: number;
  readonly place: 'at the hook' | 'above the hoist';
  readonly hole: string;
}
