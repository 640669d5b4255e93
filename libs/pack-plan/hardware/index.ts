/** Result 3: pins, shackles, slings, looms and cart parts: fitted, travelling, loose, on hand, missing; spares with the level they give. */
export { frameLoads } from './frame-loads.js';
export { hardwareFindings } from './hardware-findings.js';
export { fittedInShow } from './hardware-pieces.js';
export { sparesOfDesign } from './hardware-spares.js';
export { planHardware } from './plan-hardware.js';
