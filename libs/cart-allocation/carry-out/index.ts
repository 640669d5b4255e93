/** From a choice of carts to a list of moves in an order that can be carried out, losing as few moves as possible. */
export { plainChoice } from './plain-choice.js';
export { beamSchedule } from './schedule.js';
export { straightSchedule } from './straight-schedule.js';
