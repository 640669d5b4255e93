import type { BreachKinds, LengthBound, LoadBoundFact, TrucksBound } from '#trade';
import { type Table, type Words, tell } from '../../table/index.js';

/** Kilograms and millimetres of the load checker without decimals. */
const whole = (figure: number | undefined): string => String(Math.round(figure ?? 0));
/** Shares, and figures whose unit is not known. */
const plain = (figure: number | undefined): string =>
  String(Math.abs(figure ?? 0) < 10 ? Number((figure ?? 0).toFixed(2)) : Math.round(figure ?? 0));

const after = (stop: number | undefined): string => (stop === undefined ? '' : ` after stop ${stop}`);

type Breaches = { readonly [C in keyof BreachKinds]: { readonly [K in BreachKinds[C]]: Words['breaches'][C][K] } };

export const breaches: Breaches = {
  'unknown-piece': {
    kept: () => 'is kept in its place but is no piece of the case',
    waived: () => 'has its unloading order waived but is no piece of the case',
    placed: () => 'is no piece of the case',
  },
  'unknown-truck': {
    kept: ([piece]) => `is no truck of the case; ${piece} is kept in it`,
    answered: () => 'is no truck of the case, or stands twice',
  },
  count: {
    'kept-twice': () => 'is kept in two places',
    'not-once': (_, { times }) => `is placed or left over ${times} times instead of once`,
  },
  waived: { unnamed: () => 'has its unloading order waived, and the answer does not name it' },
  'left-over': {
    'too-high': ([truck]) => `is left over as too high, and ${truck} has the height`,
    'too-large': ([truck]) => `is left over as too large or too heavy, and ${truck} would take it`,
  },
  turned: { turned: () => 'is turned but may not be' },
  'not-whole': { place: () => 'does not stand on whole millimetres' },
  outside: { truck: () => 'does not stand inside the truck' },
  door: { high: () => 'is higher than the door' },
  blocked: { place: () => 'stands in a blocked place' },
  overlap: { piece: ([other]) => `overlaps ${other}` },
  bears: { 'too-much': (_, { loadKg, mostKg }) => `carries ${whole(loadKg)} kg, more than ${whole(mostKg)}` },
  'floor-only': { stacked: () => 'must stand on the floor' },
  support: { base: (_, { supportedMm2, baseMm2 }) => `only ${whole(supportedMm2)} of ${whole(baseMm2)} mm2 of its base is supported` },
  order: {
    'rests-on': ([later]) => `${later} rests on it but comes off later`,
    'in-the-way': ([later]) => `${later} stands in its way to the door but comes off later`,
  },
  'loading-order': {
    incomplete: () => 'does not name every piece of the truck once',
    'before-support': ([under]) => `goes in before ${under}, on which it stands`,
    'after-loaded': () => 'is loaded already and must go in before the rest',
    'lane-taken': ([other]) => `goes in when ${other} already stands in its lane`,
  },
  limit: {
    above: ([what], { value, most, stop }) => `${what} ${plain(value)}${after(stop)} is above ${plain(most)}`,
    below: ([what], { value, least, stop }) => `${what} ${plain(value)}${after(stop)} is below ${plain(least)}`,
    'kept-mass': (names, { value, most }) => `what is kept in it, ${names.join(', ')}, weighs ${whole(value)} kg, above ${whole(most)}`,
    'kept-outside': (names) =>
      `is outside an axle or balance limit with what is kept in it (${names.join(', ')}), and no rows beside it were found that level it`,
  },
  claim: {
    mass: (_, { claimed, value }) => `says ${claimed} kg, weighs ${value}`,
    length: (_, { claimed, value }) => `says ${claimed} mm used, the far end of the last piece is at ${value}`,
    side: (_, { claimed, value }) => `says the centre is ${claimed} mm to one side, it is ${value}`,
    axle: ([axle], { claimed, value }) => `says ${axle} is ${claimed}, it is ${value}`,
    'no-such-axle': ([axle], { claimed }) => `says ${axle} is ${claimed}, and the truck has none`,
  },
  bound: {
    trucks: (_, { bound, value }) => `the bound ${bound} is above ${value}`,
    length: (_, { bound, value }) => `the bound ${bound} is above ${value}`,
  },
  status: { 'not-optimal': () => 'is optimal but a bound is not met' },
  kept: {
    elsewhere: ([truck], { xMm, yMm, zMm, turned }) =>
      `is not where it is kept: ${truck}, ${xMm} / ${yMm} / ${zMm} mm${turned ? ', turned' : ''}`,
  },
};

const trucksBy: Table<TrucksBound> = {
  nothing: () => 'nothing to load',
  mass: ({ massKg }) => `mass: ${whole(massKg)} kg against payload and axles`,
  volume: () => 'volume',
  'floor-across': () => 'floor that pieces side by side can really fill',
  'floor-along': () => 'floor that pieces one behind the other can really fill',
  functions: () => 'dual-feasible functions of length and width',
};

const lengthBy: Table<LengthBound> = {
  nothing: () => 'nothing to load',
  'floor-across': ({ blockedMm }) =>
    `floor that pieces side by side can really fill${blockedMm > 0 ? ', behind what is blocked at the nose' : ''}`,
  volume: () => 'volume, by the cross-section of the truck',
  'longest-piece': () => 'longest piece',
};

export const loadBounds: Table<LoadBoundFact> = {
  proved: ({ trucks, length }) =>
    trucks.code === 'nothing' ? tell(trucksBy, trucks) : `trucks by ${tell(trucksBy, trucks)}; length by ${tell(lengthBy, length)}`,
  'not-all-ride': () => 'not all pieces ride: no bound is claimed',
  'nothing-planned': () => 'nothing is planned',
  'no-truck': () => 'no truck',
  'bad-figure': () => 'no case',
};
