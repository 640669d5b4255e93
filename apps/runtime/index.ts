export * from './embedded-database.js';
export * from './integer-program.js';
export * from './trouble.js';
