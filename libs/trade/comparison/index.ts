/** What is compared with what is allowed, and what came of it. */
export type {
  BelowPublished,
  ComparedPart,
  ComparedVerdict,
  ComparisonCause,
  ComparisonFact,
  FactorCause,
  FactorFact,
  HoistUseFact,
  LiftRemedy,
  StageFact,
  SteelLine,
  UseCaseFact,
  UsePeople,
} from './compared.js';
export type { HangPart, RoomPart, TrimMark } from './room.js';
export { verdictOfCause } from './compared.js';
