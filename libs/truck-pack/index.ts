export * from './container/index.js';
export * from './axle-loads.js';
export * from './pack-answer.js';
export * from './pack-bound.js';
export * from './solve-rows.js';
export * from './solve-truck-pack.js';
export * from './truck-case.js';
export * from './verify-truck-pack.js';
