export * from './dates/index.js';
export * from './entries/index.js';
export * from './gate.js';
export * from './season/index.js';
export * from './solve-examinations.js';
export * from './verify-examinations.js';
