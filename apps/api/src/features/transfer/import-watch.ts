import type { EntityManager } from 'typeorm';
import type { Isolation } from '../../platform/database/unit-of-work.js';
import type { CsvImport } from './csv-import.js';

/** Where an import is, one after the other. */
export const importSteps = ['waiting', 'reading', 'checking', 'writing', 'dates'] as const;
export type ImportStep = (typeof importSteps)[number];

/** Rows of the file: how many there are, and how many of them are checked, written, and have their days of use. */
export interface ImportFigures {
  readonly step: ImportStep;
  readonly total: number;
  readonly checked: number;
  readonly written: number;
  readonly dated: number;
}

/** Who looks on while rows come in. */
export interface ImportWatch {
  /** The largest file: small where a request waits for it. */
  readonly mostRows: number;
  tell(figures: Partial<ImportFigures>): void;
  /** SERIALIZABLE; or READ COMMITTED, where `begun` locks what is decided on and `saved` makes sure that the rest is as it was. */
  readonly isolation: Isolation;
  /** First in each try of the transaction, with the items that the file speaks of. */
  begun(manager: EntityManager, items: readonly string[]): Promise<void>;
  /** Last in the transaction in which the rows are saved. */
  saved(manager: EntityManager, answer: CsvImport): Promise<void>;
}

/** Inside a request, which waits for the answer. */
export const unwatched: ImportWatch = {
  mostRows: 2_000,
  isolation: 'SERIALIZABLE',
  tell: () => undefined,
  begun: () => Promise.resolve(),
  saved: () => Promise.resolve(),
};

/** Rows that are written at once, before it is told how far it is. */
const rowsAtOnce = 5_000;

/** A list in pieces of `rowsAtOnce`. */
export const inSlices = <T>(rows: readonly T[]): readonly T[][] =>
  Array.from({ length: Math.ceil(rows.length / rowsAtOnce) }, (_, index) => rows.slice(index * rowsAtOnce, (index + 1) * rowsAtOnce));
