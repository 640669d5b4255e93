export * from './bridle.js';
export * from './hang-case.js';
export * from './hang-geometry.js';
export * from './hang-outline.js';
export * from './solve-hang.js';
export * from './verify-hang.js';
