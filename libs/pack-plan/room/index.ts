/**
 * The room of a hang between its points and the floor: heights at trim, what stands between hole and point, legs beside their steel, carts that roll in under
 * it, and how near hangs come to one another.
 */
export { clearances } from './clearance.js';
export { planRoom } from './plan-room.js';
export { rolledIn, rollIns } from './roll-in.js';
export { clearanceFindings, roomFindings } from './room-findings.js';
