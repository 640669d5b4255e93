/** Reasons, changes and refusals: why something is so, as codes with figures, one closed union a question. */
export type { CartException } from './cart-exception.js';
export type { DifferenceFact } from './difference.js';
export type { FreightFact, LeftOverReason } from './freight.js';
export type { ImprovementFact } from './improvement.js';
export type { InputChange, InputPart } from './input-change.js';
export { keyOfPart, partOfKey } from './input-change.js';
export type { LoadingWish } from './loading-wish.js';
export type { MoveReason } from './move-reason.js';
export type { PlaceReason } from './place-reason.js';
export type { CellReading, ReadingFact } from './reading.js';
export type { KeptBack, ReasonAgainst } from './reason-against.js';
export type { Clash, Refusal, TickRefusal } from './refusal.js';
export type { RemedyFact } from './remedy.js';
export type { RowChoiceFact } from './row-choice.js';
export type { ShortageFact } from './shortage.js';
export type { BoxHome, SlotFinding } from './slot-verdict.js';
export type { RestackReason, WorkFinding } from './work-status.js';
