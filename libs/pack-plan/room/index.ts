/** The room of a hang between its points and the floor: heights at trim, what stands between hole and point, legs beside their steel. */
export { planRoom } from './plan-room.js';
export { roomFindings } from './room-findings.js';
