/** A truck row by row, seen from above, from the side and from the door. */
export { drawRow } from './draw-row.js';
export { drawTruckPlan, drawTruckSide } from './draw-truck.js';
