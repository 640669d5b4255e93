import type { ProposedKind } from '#trade';
import type { Words } from '../table/index.js';

const kinds: Readonly<Record<ProposedKind, string>> = {
  model: 'The model',
  item: 'The item',
  record: 'The record',
  system: 'The rigging system',
  'load rule': 'The load regime',
  'examination rule': 'The examination rule',
};

const fields: Readonly<Record<string, string>> = {
  system: 'rigging system',
  massKg: 'mass kg',
  frontHeightMm: 'front height mm',
  cgBehindMm: 'centre of gravity behind mm',
  cgBelowMm: 'centre of gravity below mm',
  cgAboveMm: 'centre of gravity above mm',
  rearLeverMm: 'rear lever mm',
  splaysDeg: 'splays deg',
  ratedRearLinkN: 'rated rear link N',
  ratedFrontPinN: 'rated front pin N',
  ratedSource: 'source of the ratings',
  ratedPick: 'rated load of a pick',
  ratedLoad: 'rated load',
  hoistClass: 'hoist class',
  ratedFor: 'what the rated load is for',
  ratedForUseCase: 'use case of the rated load',
  chainKgPerM: 'chain kg per m',
  chainLengthM: 'chain length m',
  bodyMm: 'body mm',
  hooksMm: 'both hooks mm',
  insideMm: 'inside length mm',
  lengthMm: 'length mm',
  shortestMm: 'shortest mm',
  baseMassKg: 'base alone kg',
  maxOnTopKg: 'most on top kg',
  basePins: 'base pins',
  declaredOn: 'declared on',
  firstUsedOn: 'first used on',
  dynamicFactor: 'dynamic factor',
  usableShareWithPersonsBelow: 'usable share with persons below',
  hoisting: 'factor by class of hoisting',
  workingCoefficients: 'working coefficients',
  sideLoad: 'side load',
  legAngle: 'leg angle',
  hoistClasses: 'hoist classes',
  useCases: 'use cases',
  secondarySuspension: 'secondary suspension',
  nextLatestOn: 'next no later than',
  defectBy: 'defect to be put right by',
  goingUp: 'going up',
  comingDown: 'coming down',
  mostBoxes: 'most boxes',
  mostMassKg: 'most mass kg',
  mostNoseUpDeg: 'while lifting at most nose up, degrees',
  mostNoseDownDeg: 'while lifting at most nose down, degrees',
  windLimitMps: 'wind limit m/s',
  tagLines: 'tag lines',
};

/** A field as it is called on screens; what is called there as on file is left out above. */
export const guarded: Words['guarded'] = (field) => fields[field] ?? field;

export const waiting: Words['waiting'] = {
  changed: ({ of, id, field, was, wanted }) =>
    `${kinds[of]} ${id}: ${guarded(field)} ${wanted ?? 'nothing'} is proposed and waits for the safety officer; ${was ?? 'nothing'} holds until then.`,
  new: ({ of, id }) => `${kinds[of]} ${id} is new and waits for the safety officer; nothing of it is used until then.`,
  examination: ({ item, on, report }) =>
    `The examination of ${item} on ${on}${report === null ? '' : ` (${report})`} waits for the safety officer; it does not count until then.`,
};

const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

export const proposed: Words['proposed'] = {
  changed: ({ of, id, field, was, wanted }) =>
    `${small(kinds[of])} ${id}, ${guarded(field)} ${wanted ?? 'nothing'} instead of ${was ?? 'nothing'}`,
  new: ({ of, id }) => `${small(kinds[of])} ${id}, new on file`,
  examination: ({ item, on, report }) => `the examination of ${item} on ${on}${report === null ? '' : ` (${report})`}`,
};
