/** What the record of an examination says, by code. */
export * from './record-field.js';
export * from './check-kind.js';
