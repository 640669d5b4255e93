/** What a plan is: the shapes of its five results and its findings, known by every other room; it knows none of them. */
export type { ChainResult, HardwareLine, HardwareResult, TrunkResult } from './hardware-result.js';
export type { ComparedFact, Comparison, Factor } from './comparison.js';
export type { LiftCase } from './lift-case.js';
export type {
  EnvelopeResult,
  HangResult,
  LegResult,
  PickResult,
  PicksHead,
  PicksResult,
  Point,
  PullBackResult,
  RunningOrder,
  RunningOrderStep,
  StageResult,
  StepFact,
  WorstLoads,
} from './picks-result.js';
export type { BeamResult, PickKit, SiteResult } from './site-result.js';
export type { HangClearance, LegRoom, PickRoom, RollIn, RoomPiece, RoomResult } from './room-result.js';
export { type Checked, checkedBy, type Mismatch, mismatchesOf } from './mismatch.js';
export type {
  BoxMove,
  CartLoad,
  CartsResult,
  DueItem,
  DueResult,
  LandedFinding,
  PackPlan,
  PlannedBox,
  Said,
  Stack,
  ToldFinding,
} from './plan.js';
export { type StowageFigures, groupOf } from './truck-result.js';
export { concernsHang, concernsTruck, stoppedJoints, subjectsOf } from './concerns.js';
export { type SolveLimits, capSeconds } from './solve-limits.js';
export type {
  AxleLoad,
  AxleInRow,
  AxleStop,
  BridgeCheck,
  LoadingNote,
  Placement,
  TruckResult,
  TruckResultOne,
  TruckRow,
  TrucksHead,
} from './truck-result.js';
export type { TickKey } from './tick-key.js';
export type { RowWay } from './tick-key.js';
export { moveKey, rowKey, rowWays, stepKey, tickKeyOf, tickKinds, tickText, tickWords } from './tick-key.js';
export type { Working } from './working.js';
export type { HowItStands, MoveWeights, TourLoad, TourStop, WholeTour } from './whole-tour.js';
