/** Sheets for whoever inspects: the file of a show, the report of one examination, the life of an item, an extract of the register, the due list. */
export { dueListSheet, dueMark } from './due-list-sheet.js';
export { itemsInTheAir } from './in-the-air.js';
export { type BarredAloft, hangsWithSheet, nothingBarredSheet } from './hangs-with.js';
export { type InspectionFile, inspectionFile } from './inspection-file.js';
export { lentNote } from './lent-note.js';
export { extractSheet, lifeList, reportSheet } from './report-sheet.js';
