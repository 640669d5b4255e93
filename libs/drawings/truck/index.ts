/** A truck row by row, seen from above and from the side. */
export { drawTruckPlan, drawTruckSide } from './draw-truck.js';
