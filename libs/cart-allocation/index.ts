export * from './blocks-problem.js';
export * from './allocation-case.js';
export * from './cut-hang.js';
export * from './describe-moves.js';
export type { Preferences } from './floor-plan.js';
export * from './solve-allocation.js';
export * from './verify-allocation.js';
