/** The lists of a file as CSV: one table of columns a kind, which the forms on screen follow as well. */
export { csvColumns, csvExamples } from './csv-columns.js';
export type { CsvFault } from './csv-fault.js';
export type { ModelKind } from './model-columns.js';
export { modelCell, modelColumns, modelKinds } from './model-columns.js';
export { modelExamples } from './model-examples.js';
export { type ListedExamination, examinationCells, examinationColumns, examinationExamples } from './examination-columns.js';
export { type ExaminationsCsv, type ListedRow, columnOf, readExaminationsCsv } from './read-examinations-csv.js';
export { readItemsCsv, withUnseen } from './read-items-csv.js';
export { type ModelsCsv, headingOf, readModelsCsv } from './read-models-csv.js';
export { sharedColumns } from './shared-columns.js';
