/** Every sheet by its name, made of drawings and tables. */
export { angle, hangSheet, nearestSentence, slackSentence, windSentence } from './hang-sheet.js';
export { hardwareSheets, learnedWords, takenWords, notToBeUsed, zeroSpares } from './hardware-sheet.js';
export { jointContent } from './joint-table.js';
export { pickContent, pickSheet, stageContent, stageSheet } from './pick-sheet.js';
export { riggingCaution, runningSheets } from './running-sheet.js';
export { stepWords } from './step-words.js';
export type { SheetContext } from '../paper/index.js';
export { cartCardSheet, dueSheet, moveSheet } from './sheets.js';
export {
  dockSentence,
  orderSteps,
  partLoadSentence,
  rowParts,
  sideWords,
  stopsOf,
  stowageLines,
  truckSheet,
  unlimitedSentence,
} from './truck-sheet.js';
export type { NamedSheets } from './named-sheets.js';
export { allSheets, namedSheets } from './named-sheets.js';
export { wholePlanHtml } from './whole-plan-html.js';
