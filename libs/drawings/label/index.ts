/** Labels of items: codes for readers and cameras, large text for people, on the paper that a house has. */
export type { LabelOf, LabelStock } from './label-sheets.js';
export { labelSheets, labelStocks } from './label-sheets.js';
export type { Gs1Kind } from './gs1-keys.js';
export { checkDigit, faultOfPrefix, gs1Key } from './gs1-keys.js';
