/** Which cart gets which load and which box, with the fewest box moves. The story: solve-allocation.ts; each room's door says what it is for. */
export {
  type AllocationAnswer,
  type AllocationCase,
  type BlocksProblem,
  type BoxMoveAnswer,
  type CutLoad,
  type CutOptions,
  type Preferences,
  allocationCaseOf,
  allocationCaseSchema,
  cutHang,
  readAllocationCase,
  readBlocksProblem,
} from './case/index.js';
export { verifyAllocation } from './check/index.js';
export * from './solve-allocation.js';
export { groupMoves, moveReasons, naiveBoxMoves } from './why/index.js';
