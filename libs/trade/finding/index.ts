/** What a plan has to say, as one closed union of codes, and how much each weighs. */
export type { CartFinding } from './cart-finding.js';
export type { DueFinding, InputFinding, Whereabouts } from './due-finding.js';
export type { Code, Finding, FindingOf } from './finding.js';
export type { HardwareFinding } from './hardware-finding.js';
export type { BareLine, PickFinding } from './pick-finding.js';
export type { RoomFinding } from './room-finding.js';
export type { BridgeFact, BridgeRun, TruckFinding } from './truck-finding.js';
export type { Section, Weight } from './weight-of.js';
export { barsRelease, needsOfficer, sectionOf, standingOf, weightOf } from './weight-of.js';
