/** Designs: hangs kept by a name, flown at many shows of a tour, and what differs at one of them. */
export { type AtShow, type KeptAtShow, changeDesign } from './change-design.js';
export { type Difference, differences } from './differences.js';
export { followDesign, keepAsDesign } from './follow-design.js';
