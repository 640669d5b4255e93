/** The points of the structure on paper and as data: loads, kit, legs, beams, the mark-out, rows for a spreadsheet, the open scene format. */
export { markOutRows, markOutSheet } from './mark-out-sheet.js';
export { pointRows } from './point-rows.js';
export { pointSheet, pointTable } from './point-sheet.js';
export { scenePoints } from './scene-points.js';
