/** Drawings and printed sheets as trees, for the screen, the page and the file. */
export { drawCart, drawCode, drawMove, drawStacks } from './cart/index.js';
export { drawDue } from './due/index.js';
export type { DrawnHang } from './hang/index.js';
export { drawHang, drawLift, drawRear, drawStage } from './hang/index.js';
export { markOutRows, markOutSheet, pointRows, pointSheet, pointTable, scenePoints } from './points/index.js';
export type { LabelOf, LabelStock } from './label/index.js';
export { checkDigit, faultOfPrefix, gs1Key, labelSheets, labelStocks } from './label/index.js';
export type { InspectionFile } from './inspection/index.js';
export {
  dueListSheet,
  dueMark,
  extractSheet,
  hangsWithSheet,
  nothingBarredSheet,
  inspectionFile,
  itemsInTheAir,
  lentNote,
  lifeList,
  reportSheet,
} from './inspection/index.js';
export { onePersonLine, withOnePersonLine } from './paper/index.js';
export type { NamedSheets, SheetContext } from './sheets/index.js';
export {
  allSheets,
  angle,
  cartCardSheet,
  dockSentence,
  dueSheet,
  hangSheet,
  hardwareSheets,
  jointContent,
  learnedWords,
  moveSheet,
  namedSheets,
  nearestSentence,
  orderSteps,
  partLoadSentence,
  pickContent,
  pickSheet,
  riggingCaution,
  rowParts,
  runningSheets,
  sideWords,
  slackSentence,
  stageContent,
  stageSheet,
  stepWords,
  stopsOf,
  stowageLines,
  takenWords,
  notToBeUsed,
  zeroSpares,
  truckSheet,
  unlimitedSentence,
  wholePlanHtml,
  windSentence,
} from './sheets/index.js';
export type { Node, Units } from './tree/index.js';
export {
  drawingStyle,
  formatForce,
  formatLength,
  formatMass,
  formatNumber,
  formatShort,
  percent,
  renderMarkup,
  sheetStyle,
} from './tree/index.js';
export { drawRow, drawStowingStep, drawTruckPlan, drawTruckSide, partName, spaceName } from './truck/index.js';
