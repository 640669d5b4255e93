/** Last days of use over the days of a tour. */
export { drawDue } from './draw-due.js';
