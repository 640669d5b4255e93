/** Which cart gets which load and which box, with the fewest box moves. The story: solve-allocation.ts; each room's door says what it is for. */
export {
  type AllocationAnswer,
  type AllocationCase,
  type AllocationInput,
  type BlocksProblem,
  type BoxMoveAnswer,
  type BoxShortage,
  type CartShortage,
  type CutLoad,
  type CutOptions,
  type Preferences,
  type StoppedBy,
  allocationCaseOf,
  allocationCaseSchema,
  cutHang,
  makeAllocationCase,
  readAllocationCase,
  readBlocksProblem,
} from './case/index.js';
export { type AllocationMismatch, verifyAllocation } from './check/index.js';
export * from './solve/index.js';
export * from './tour/index.js';
export {
  type AnswerInHand,
  type Why,
  type WhyNotAnother,
  type Wish,
  groupMoves,
  type MoveReason,
  moveReasons,
  naiveBoxMoves,
  whyThisBox,
  whyThisCart,
} from './why/index.js';
