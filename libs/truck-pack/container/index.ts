export * from './container-case.js';
export * from './solve-container.js';
export * from './verify-container.js';
