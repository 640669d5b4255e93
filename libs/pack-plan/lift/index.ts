/** The lift of a hang moment by moment: what it is computed from, and each moment with its forces where they act. */
export { liftCase } from './lift-case.js';
export { jointsAlone } from './joints-alone.js';
export { loadedLockPins } from './lock-pins.js';
export { stepFact } from './step-facts.js';
export type { LiftMoment, MomentJoint, MomentPick } from './lift-moments.js';
export type { WorkingTilt } from './working-tilt.js';
export { beyondTilt, liftRemedies, mostTilted, tailLineN, workingTiltOf } from './working-tilt.js';
export { liftMoments, worstMoment } from './lift-moments.js';
