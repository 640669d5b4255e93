/** Codes into sentences, one folder a language. Nothing reads a sentence back: what decides reads codes and figures. */
export { english } from './english/index.js';
export type { Table } from './table.js';
export { tell } from './table.js';
export type { ComparisonFactByCode, Words } from './words.js';
export { nameOf, sentenceOf } from './words.js';
