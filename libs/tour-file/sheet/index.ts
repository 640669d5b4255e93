/** A sheet as somebody else wrote it: what is between its cells, which of its columns is which of ours, what kind of rows it holds. */
export { type Column, type Match, headingRowOf, matchColumns, plainName } from './match-columns.js';
export { allColumns, importOrder, kindOfSheet, knownColumns, neededColumns } from './kind-of-sheet.js';
export { type Separator, separatorOf } from './separator.js';
export { type MatchedSheet, matchedSheet } from './matched-sheet.js';
export { type RowFaults, correctedRows } from './corrected-rows.js';
