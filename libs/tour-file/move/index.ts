/** A show on other days: what breaks by it, before it is saved. */
export { type Broken, type DatedItem, brokenByMove } from './broken-by-move.js';
