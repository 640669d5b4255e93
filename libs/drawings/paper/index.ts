/** What every sheet is made of: its head, tables, findings, cautions, signatures. */
export * from './sheet-parts.js';
export * from './one-person.js';
