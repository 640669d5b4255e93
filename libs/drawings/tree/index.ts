/** What a drawing or sheet is: a tree of elements, how it prints, and in which units. */
export type { Node } from './node.js';
export { node, renderMarkup } from './node.js';
export { drawingStyle, sheetStyle } from './print-style.js';
export type { Units } from './units.js';
export { formatForce, formatLength, formatMass, formatNumber, formatShort, percent } from './units.js';
