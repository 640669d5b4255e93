/** One sentence for each finding, by the part of the plan that it belongs to. */
export { against, cartFindings, exceptions, keptBack, shortages } from './cart-findings.js';
export { dueFindings, whereabouts } from './due-findings.js';
export { hardwareFindings } from './hardware-findings.js';
export { bareLines, pickFindings } from './pick-findings.js';
export { roomFindings } from './room-findings.js';
export { bridge, leftOver, tag, truckFindings, wishes } from './truck-findings.js';
