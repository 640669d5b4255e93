import type { CartFinding } from './cart-finding.js';
import type { DueFinding, InputFinding } from './due-finding.js';
import type { HardwareFinding } from './hardware-finding.js';
import type { PickFinding } from './pick-finding.js';
import type { RoomFinding } from './room-finding.js';
import type { TruckFinding } from './truck-finding.js';

/** One thing that a plan has to say, as data: what is the case, about what, with which figures. Words come from a table of words. */
export type Finding = InputFinding | PickFinding | RoomFinding | CartFinding | HardwareFinding | TruckFinding | DueFinding;
export type Code = Finding['code'];
export type FindingOf<C extends Code> = Extract<Finding, { readonly code: C }>;
