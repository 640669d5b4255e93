/** The words of the trade as data: ids, subjects, findings, reasons and refusals with their figures. Every room may know it; it knows the kernel. */
export type {
  ComparedPart,
  ComparedVerdict,
  ComparisonCause,
  ComparisonFact,
  FactorCause,
  FactorFact,
  HoistUseFact,
  SteelLine,
  StageFact,
} from './compared.js';
export { verdictOfCause } from './compared.js';
export * from './finding/index.js';
export type * from './id.js';
export * from './reason/index.js';
export type * from './subject.js';
export { listSubjects, mainSubjects } from './told.js';
