/** A tour file and a show -> the five results of a pack plan: what a plan is (contract), one room a result, the maker, and what the floor does with it. */
export type {
  AxleStop,
  BridgeCheck,
  CartLoad,
  CartsResult,
  Comparison,
  DueResult,
  Factor,
  HangClearance,
  HangResult,
  HardwareLine,
  HardwareResult,
  LegResult,
  PackPlan,
  PickResult,
  PicksHead,
  PicksResult,
  Placement,
  Point,
  RunningOrderStep,
  Said,
  SolveLimits,
  Stack,
  StepFact,
  TickKey,
  ToldFinding,
  TruckResult,
  TruckResultOne,
  TrucksHead,
  TourLoad,
  TourStop,
  WholeTour,
  HowItStands,
  MoveWeights,
  Working,
} from './contract/index.js';
export { capSeconds } from './contract/index.js';
export type { RowWay } from './contract/index.js';
export { moveKey, rowKey, rowWays, stepKey, tickKeyOf, tickKinds, tickText, tickWords } from './contract/index.js';
export { concernsHang, concernsTruck, groupOf, stoppedJoints, subjectsOf } from './contract/index.js';
export type { PlanDifference } from './differ/index.js';
export { differenceBetween } from './differ/index.js';
export type { Place } from './carts/index.js';
export { whyHere } from './carts/index.js';
export type {
  BarredItem,
  BetweenShows,
  BoxFacts,
  Floor,
  FloorJob,
  FloorRecord,
  FloorState,
  MoveAction,
  MoveMade,
  MovesInHand,
  WhatNow,
  WorkList,
} from './floor/index.js';
export {
  afterMove,
  againstMoveBack,
  barredItems,
  betweenShows,
  bounceMs,
  checkCart,
  isSame,
  movesInHand,
  tapGate,
  whatNow,
  workListOf,
} from './floor/index.js';
export type { CartProgress, CartRead, CodeMatch, FloorCommand, HouseAnswer } from './scan/index.js';
export { commandCodes, commandOf, keyReader, matchCode, progressOf, readCode, seenCodes, textOfCode } from './scan/index.js';
export { fittedInShow, sparesOfDesign } from './hardware/index.js';
export type { Fingerprint, FleetInput } from './inputs/index.js';
export {
  changedInputs,
  changesBetween,
  designOf,
  fingerprintOf,
  fingerprintOfIds,
  fingerprintOfItems,
  fingerprintWithoutItems,
  firstDayFor,
  fleetCalendar,
  floorFits,
  gatherInputs,
  itemsPart,
  partsOfItem,
  remediesFor,
  whyNotUsable,
  withFloor,
  placeOf,
} from './inputs/index.js';
export type { KeptPlan as EarlierPlan } from './landed/index.js';
export {
  landedKeyOf,
  printedPlan,
  wholeCarts,
  wholeDue,
  wholeFingerprint,
  wholeHang,
  wholeHardware,
  wholePicks,
  wholePlan,
  wholeTruck,
} from './landed/index.js';
export type { Improvement } from './make/index.js';
export { improvePlan, isOpen, makePackPlan, makeSteadyPlan, planLoads, replanTrucks } from './make/index.js';
export type { LiftMoment } from './lift/index.js';
export { liftMoments, worstMoment } from './lift/index.js';
export { againstTick, againstTickDown, judgeReading, stepsDown } from './picks/index.js';
export type { PointFacts, StructurePoint } from './points/index.js';
export { pointFacts, structurePoints } from './points/index.js';
export type { ReleaseDecision } from './release/index.js';
export { decideRelease } from './release/index.js';
export { hoistUse, isWornOut, leastDimensionMm, personsBelowFactors, ratedKg, sideLoadFactor } from './rules/index.js';
export type { RowSwap } from './trucks/index.js';
export { swapOf } from './trucks/index.js';
export type { FaultFound, FaultKind, FaultRecord, LastSeen, ReturnPiece, Sighting, Travelling } from './return/index.js';
export { faultKinds, faultStates, openFaults, whatIsBack } from './return/index.js';
export type { BenchCheck, PickPlace, TrunkLine, Used } from './prep/index.js';
export { afterBench, benchChecks, leavesTheHouse, pickList, splaysToSet, trunkLines, wrongCounts, wrongSplays } from './prep/index.js';
export type { WholeTourAnswer, WholeTourAsked } from './tour/index.js';
export { planWholeTour } from './tour/index.js';
