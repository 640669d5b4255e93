/** A hang from the side and from the rear, and the stage from above. */
export type { DrawnHang } from './draw-hang.js';
export { drawHang, hatch, round } from './draw-hang.js';
export { drawLift } from './draw-lift.js';
export { headroomText, trimText } from './draw-trim.js';
export { drawRear } from './draw-rear.js';
export { drawStage } from './draw-stage.js';
export { roundAbout } from './round-about.js';
