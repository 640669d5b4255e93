/**
 * What is asked and what is answered: a floor of carts with their stacks and the loads wanted of it, as it is written (`AllocationCase`), as the searches
 * see it (`FloorPlan`: small whole numbers), and the shape of an answer. Also the two ways a case comes about beside the file: a hang cut into
 * loads, a problem of the blocks world. Knows none of the searches.
 */
export * from './allocation-answer.js';
export * from './allocation-case.js';
export * from './blocks-problem.js';
export * from './cut-hang.js';
export * from './floor-plan.js';
