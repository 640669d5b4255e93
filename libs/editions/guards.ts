import type { Catalogue } from '#tour-file';
import {
  type Compare,
  earlier,
  fewer,
  higher,
  inPart,
  lower,
  lowerRating,
  moreUsed,
  olderSince,
  outOfService,
  unclear,
} from './direction.js';

/** Fields by which people are hurt, each with the way in which it may go at once; every other field is free. */
export type Guard = Readonly<Record<string, Compare>>;

/** Of what hangs: weight, figures that loads are worked out from, ratings. Trucks and cases neither lift nor are lifted. */
const models: Readonly<Record<keyof Catalogue, Guard | null>> = {
  boxes: {
    ...{ system: unclear, massKg: higher, frontHeightMm: unclear, cgBehindMm: unclear, cgBelowMm: unclear, rearLeverMm: unclear },
    ...{ splaysDeg: fewer, pins: unclear, ratedRearLinkN: lower, ratedFrontPinN: lower, ratedSource: unclear },
  },
  grids: {
    ...{ system: unclear, massKg: higher, cgBehindMm: unclear, cgAboveMm: unclear, holes: unclear },
    ...{ splaysDeg: fewer, pins: unclear, ratedPick: lowerRating },
  },
  hoists: {
    ...{ massKg: higher, ratedLoad: lowerRating, hoistClass: unclear, chainKgPerM: higher, chainLengthM: unclear },
    ...{ bodyMm: unclear, hooksMm: unclear, ratedFor: unclear, ratedForUseCase: unclear },
  },
  shackles: { massKg: higher, ratedLoad: lowerRating, size: unclear, insideMm: unclear },
  slings: { massKg: higher, ratedLoad: lowerRating, lengthMm: unclear, shortestMm: unclear, material: unclear },
  pins: { massKg: higher, size: unclear },
  looms: { massKg: higher },
  carts: { massKg: higher, baseMassKg: higher, maxOnTopKg: lower, basePins: unclear },
  cases: null,
  trucks: null,
  frames: { system: unclear, massKg: higher, pins: unclear, ratedLoad: lowerRating },
  cells: { massKg: higher, ratedLoad: lowerRating, insideMm: unclear },
  controls: null,
  aids: { massKg: higher },
};

/** What of a kind of model is guarded; null: nothing. */
export const guardOf = (kind: keyof Catalogue): Guard | null => models[kind];

export const guardedModels = (Object.keys(models) as (keyof Catalogue)[]).filter((kind) => models[kind] !== null);

/** Title and edition are words beside the figures. */
export const loadRuleGuard: Guard = {
  jurisdiction: unclear,
  source: unclear,
  status: unclear,
  dynamicFactor: higher,
  usableShareWithPersonsBelow: lower,
  hoisting: inPart({ least: higher, perSpeedSPerM: higher, speedMps: higher }),
  workingCoefficients: unclear,
  sideLoad: unclear,
  legAngle: inPart({ leastFromHorizontalDeg: higher }),
  hoistClasses: unclear,
  useCases: unclear,
  secondarySuspension: inPart({ whenPersonsBelow: (_was, wanted) => (wanted === true ? 'cautious' : 'permissive') }),
  reserve: inPart({ share: higher }),
  reading: inPart({ toleranceShare: lower }),
  wear: unclear,
  onePickSlack: unclear,
};

/** Of an item that waits itself: what vouches for it. */
export const declarationGuard: Guard = { declaredOn: earlier };

/** Of an item on file. What makes it younger than it is waits. The count of a lot that nobody has examined or declared is free: nothing on file speaks for it. */
export const itemGuard = (isVouchedFor: boolean): Guard => ({
  model: unclear,
  state: outOfService,
  declaredOn: earlier,
  firstUsedOn: olderSince,
  uses: moreUsed,
  ...(isVouchedFor ? { count: lower } : {}),
});
