/** A truck row by row, seen from above, from the side and from the door. */
export { drawRow } from './draw-row.js';
export { drawStowingStep } from './draw-stowing.js';
export { drawTruckPlan, drawTruckSide, partName, spaceName } from './draw-truck.js';
