/** The table that a language fills: a sentence or a part of one for every code. */
export type { Table } from './table.js';
export { tell } from './table.js';
export type { ComparisonFactByCode, Words } from './words.js';
export { breachOf, nameOf, sentenceOf } from './words.js';
export { saidOnce } from './said-once.js';
