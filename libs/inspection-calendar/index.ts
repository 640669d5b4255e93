export * from './due-date.js';
export * from './examinations-case.js';
export * from './gate.js';
export * from './judge-item.js';
export * from './solve-examinations.js';
export * from './verify-examinations.js';
