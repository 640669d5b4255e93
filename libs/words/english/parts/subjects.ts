import type { AxleName, Subject } from '#trade';
import type { Words } from '../../table/index.js';

export const axles: Record<AxleName, string> = {
  kingpin: 'kingpin',
  trailer: 'trailer axles',
  drive: 'drive axle',
  steer: 'steer axle',
  front: 'front axle',
  rear: 'rear axle',
  gross: 'gross mass',
};

export const subjects: Words['subjects'] = {
  tour: ({ name }) => name,
  show: ({ name }) => name,
  hang: ({ name }) => name,
  joint: ({ name, position }) => `${name} joint ${position}`,
  pick: ({ name, hole }) => `${name} hole ${hole}`,
  point: ({ name }) => name,
  structure: () => 'structure',
  'cart load': ({ name }) => name,
  cart: ({ id }) => id,
  slot: ({ cart, slot }) => (cart === null ? `slot ${slot}` : `${cart} slot ${slot}`),
  item: ({ id }) => id,
  model: ({ id }) => id,
  truck: ({ id }) => id,
  axle: ({ truck, axle }) => `${truck} ${axles[axle]}`,
  row: ({ truck, row }) => `${truck} row ${row}`,
  piece: ({ id }) => id,
  group: ({ name }) => name,
  line: ({ model }) => model,
  day: ({ on }) => on,
  rule: ({ title }) => title,
  place: ({ id }) => id,
  system: ({ id }) => id,
  field: ({ path }) =>
    path
      .map((step) => (typeof step === 'number' ? `[${step}]` : `.${step}`))
      .join('')
      .replace(/^\./, ''),
  quote: ({ text }) => text,
};

const one = (subject: Subject): string => (subjects[subject.kind] as (each: Subject) => string)(subject);

/** Several of one kind in one line. */
export const about: Words['about'] = (all) => all.map(one).join(', ');
