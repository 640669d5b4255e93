/** The record of an item and what follows from it: the last day on which it may be used, and its state in a window. */
export { withDecidingRecords } from './deciding-records.js';
export * from './due-date.js';
export * from './examinations-case.js';
export * from './judge-item.js';
