/** What comes home: what is back, where what is not was seen last and by whom, what a fault leads to, and whether a test still answers it. */
export type { FaultFound, FaultKind, FaultRecord } from './faults.js';
export { faultKinds, faultStates, openFaults } from './faults.js';
export type { LastSeen, ReturnPiece, Sighting, Travelling } from './what-is-back.js';
export { whatIsBack } from './what-is-back.js';
