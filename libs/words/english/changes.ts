import type { DifferenceFact, InputPart } from '#trade';
import { type Words, tell } from '../table/index.js';
import { trimMarks } from './parts/index.js';

export const inputs: Words['inputs'] = {
  tour: () => 'the dates, trucks and freight of the tour',
  spares: () => 'the spares wanted and the losses counted',
  'other-shows': () => 'the other shows of the tour',
  show: () => 'the venue, dates and rule of the show',
  'examination-rules': () => 'the examination rules',
  'load-rules': () => 'the load rules',
  systems: () => 'the rigging systems',
  bookings: () => 'promises to other tours',
  register: () => 'which items are on file',
  loading: () => 'the loading wishes of the show',
  names: () => 'what things are called',
  hang: ({ id }) => `the hang ${id}`,
  model: ({ of, id }) => `the model ${id} (${of})`,
  item: ({ of, id }) => `${of} ${id}`,
};

/** Parts that are one thing take the singular. */
const isOne = ({ code }: InputPart): boolean => code === 'hang' || code === 'model' || code === 'item';

export const changes: Words['changes'] = {
  changed: ({ part }) => `${tell(inputs, part)} ${isOne(part) ? 'has' : 'have'} changed`,
  new: ({ part }) => `${tell(inputs, part)} ${isOne(part) ? 'is' : 'are'} new`,
  gone: ({ part }) => `${tell(inputs, part)} is no longer on file`,
  'floor-differs': () => 'the boxes stand on the carts as they do at no point of the list of moves',
};

export const more: Words['more'] = (count) => `${count} more`;

const hundredth = (value: number): number => Math.round(value * 100) / 100;
const rowOf = ({ truck, row }: { readonly truck: string; readonly row: number }): string => `${truck} row ${row}`;
const whole = (value: number): string => `${Math.round(value)} kg`;

type Of<C extends DifferenceFact['code']> = Extract<DifferenceFact, { readonly code: C }>;

function boxWords({ hang, position, before, after }: Of<'box'>): string {
  const place = `${hang} position ${position}`;
  if (before === null) return `${place}: ${after} comes in.`;
  return after === null ? `${place}: ${before} comes out.` : `${place}: ${after} instead of ${before}.`;
}

export const differences: Words['differences'] = {
  'hang-new': ({ hang, boxes }) => `${hang} is new: ${boxes} boxes.`,
  'hang-gone': ({ hang }) => `${hang} is no longer flown.`,
  'hang-length': ({ hang, before, after }) => `${hang} has ${after} boxes instead of ${before}.`,
  'hang-tilt': ({ hang, beforeDeg, afterDeg }) =>
    `${hang} is tilted ${hundredth(afterDeg)}° instead of ${hundredth(beforeDeg)}°, nose down.`,
  'hang-trim-to': ({ hang, before, after }) =>
    `The trim height of ${hang} is measured to ${trimMarks[after]} instead of ${trimMarks[before]}.`,
  'hang-trim': ({ hang, beforeMm, afterMm }) => `${hang} hangs at ${afterMm} mm instead of ${beforeMm} mm.`,
  splay: ({ hang, position, beforeDeg, afterDeg }) => `${hang} position ${position}: splay ${afterDeg}° instead of ${beforeDeg}°.`,
  'box-model': ({ hang, position, before, after }) => `${hang} position ${position}: ${after} instead of ${before}.`,
  box: boxWords,
  cart: ({ load, before, after }) => `${load} rides in ${after ?? 'no cart'} instead of ${before ?? 'no cart'}.`,
  'pick-new': ({ hang, hole, hookLoadKg }) => `${hang} is picked at hole ${hole}: ${whole(hookLoadKg)} at the hook.`,
  'hook-load': ({ hang, hole, beforeKg, afterKg }) => `${hang} hole ${hole}: ${whole(afterKg)} at the hook instead of ${whole(beforeKg)}.`,
  hoist: ({ hang, hole, before, after }) => `${hang} hole ${hole}: hoist ${after ?? 'not found'} instead of ${before ?? 'none'}.`,
  'line-new': ({ item, model, fitted }) => `${item} (${model}) is new: ${fitted} fitted.`,
  'line-count': ({ item, model, before, after }) =>
    `${item} (${model}): ${after.fitted} fitted and ${after.looseWithSpares} loose with spares, instead of ${before.fitted} and ${before.looseWithSpares}.`,
  'piece-new': (at) => `${at.piece} rides in ${rowOf(at)}; it did not travel before.`,
  'piece-moved': ({ piece, before, after }) => `${piece} stands in ${rowOf(after)} instead of ${rowOf(before)}.`,
  'piece-gone': ({ piece }) => `${piece} no longer travels.`,
  'due-state': ({ item, before, after }) => `${item}: ${after} instead of ${before}.`,
};
