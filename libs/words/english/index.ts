/** English: one sentence for every code. */
import type { Words } from '../table/index.js';
import { against, cartFindings, exceptions, keptBack, shortages } from './cart-findings.js';
import { changes, differences, inputs, more } from './changes.js';
import { comparisons, factors, parts, stages } from './compared.js';
import { dueFindings, whereabouts } from './due-findings.js';
import { figure } from './figures.js';
import { improvements } from './improvements.js';
import { breaches, loadBounds } from './load-breaches.js';
import { moves, restacked, slots, work } from './floor.js';
import { hardwareFindings } from './hardware-findings.js';
import { rows } from './row-reasons.js';
import { bareLines, pickFindings } from './pick-findings.js';
import { roomFindings } from './room-findings.js';
import { places } from './place-reasons.js';
import { readings, refusals, remedies, tickRefusals } from './refusals.js';
import { about, axles, subjects } from './subjects.js';
import { bridge, leftOver, tag, truckFindings, wishes } from './truck-findings.js';

export const english: Words = {
  findings: { ...dueFindings, ...pickFindings, ...roomFindings, ...cartFindings, ...hardwareFindings, ...truckFindings },
  about,
  subjects,
  axles,
  figure,
  parts,
  comparisons,
  factors,
  stages,
  exceptions,
  against,
  keptBack,
  inputs,
  changes,
  more,
  shortages,
  rows,
  places,
  improvements,
  moves,
  slots,
  wishes,
  work,
  restacked,
  differences,
  readings,
  refusals,
  tickRefusals,
  remedies,
  bridge,
  whereabouts,
  bareLines,
  tag,
  leftOver,
  breaches,
  loadBounds,
};
