export * from './examinations-case.js';
export * from './judge-item.js';
export * from './plan-visits.js';
export * from './solve-examinations.js';
export * from './verify-examinations.js';
