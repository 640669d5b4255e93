/** Loading trucks: rows that people build (`solveRows`), loads of any kind (`solveTruckPack`), one container filled (`solveContainer`). */
export * from './container/index.js';
export { boundOf, mostPayloadKg, type PackBound } from './bound/index.js';
export * from './case/index.js';
export * from './check/index.js';
export { type RowsAnswer } from './fleet/index.js';
export * from './load-rows.js';
export { type LengthCauses } from './rows/index.js';
export * from './small/index.js';
export * from './solve-rows.js';
export * from './solve-truck-pack.js';
export * from './stowage/index.js';
