import {
  type CsvFault,
  type ItemKind,
  type Match,
  type MatchedSheet,
  type ModelKind,
  allColumns,
  headingRowOf,
  importOrder,
  kindOfSheet,
  knownColumns,
  matchColumns,
  matchedSheet,
  neededColumns,
  readExaminationsCsv,
  readItemsCsv,
  readModelsCsv,
} from '#tour-file';
import type { RawSheet } from '../sheet/read-sheets.js';

/** A sheet that is to come in: what kind of rows it holds, and which of its columns is which of ours. */
export interface SheetToImport {
  readonly key: number;
  readonly raw: RawSheet;
  readonly headingAt: number;
  /** Empty: nobody has said it yet. */
  readonly kind: string;
  readonly match: Match;
}

/** `kinds`: those that this person may bring in. */
export function sheetToImport(key: number, raw: RawSheet, kinds: readonly string[]): SheetToImport {
  const headingAt = headingRowOf(raw.records, allColumns);
  const kind = kindOfSheet(raw.name, raw.records[headingAt] ?? []) ?? (kinds.length === 1 ? (kinds[0] ?? '') : '');
  return ofKind({ key, raw, headingAt, kind, match: [] }, kinds.includes(kind) ? kind : '');
}

export const ofKind = (sheet: SheetToImport, kind: string): SheetToImport => ({
  ...sheet,
  kind,
  match: matchColumns(sheet.raw.records[sheet.headingAt] ?? [], knownColumns(kind)),
});

export const matched = ({ raw, headingAt, match }: SheetToImport): MatchedSheet => matchedSheet(raw.records, headingAt, match);

export const missingColumns = ({ kind, match }: SheetToImport): readonly string[] =>
  kind === '' ? [] : neededColumns(kind).filter((each) => !match.includes(each));

/** What can be said of the rows before the house has seen them. */
export function faultsHere({ kind }: SheetToImport, { records }: MatchedSheet): readonly CsvFault[] {
  const [of, name] = kind.split('/');
  if (of === 'examinations') return readExaminationsCsv(records).faults;
  return of === 'items' ? readItemsCsv(name as ItemKind, records).faults : readModelsCsv(name as ModelKind, records).faults;
}

/** Models before items, what is inside before what it is in; sheets of no kind yet last. */
export const inOrder = (sheets: readonly SheetToImport[]): readonly SheetToImport[] => {
  const place = ({ kind }: SheetToImport): number => (kind === '' ? importOrder.length : importOrder.indexOf(kind));
  return [...sheets].sort((a, b) => place(a) - place(b) || a.key - b.key);
};
