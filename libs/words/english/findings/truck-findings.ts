import type { AxleSubject, BridgeRun } from '#trade';
import { type Words, breachOf, tell } from '../../table/index.js';
import { breaches, axles, kilograms, list, tonnes } from '../parts/index.js';
import { against } from './cart-findings.js';

const pieces = (count: number): string => (count === 1 ? '1 piece stays' : `${count} pieces stay`);

export const wishes: Words['wishes'] = {
  kept: ({ truck, pieces: count, loaded }) =>
    `${truck}: ${pieces(count)} where ${count === 1 ? 'it stands' : 'they stand'}${loaded > 0 ? `, ${loaded} of them loaded` : ''}.`,
  waived: ({ name, reason, by, on }) => `${name} need not come off in its turn: ${reason} (${by}, ${on}).`,
  taken: ({ piece, by, on }) => `${piece} was taken along at the dock (${by}, ${on}).`,
  end: ({ group, name = group, end }) => `${name}: wanted at the ${end}.`,
  'kept-piece-gone': ({ piece, truck }) => `${piece} was to stay where it stands in ${truck}, but it no longer travels.`,
  'kept-truck-gone': ({ piece, truck }) => `${piece} was to stay in ${truck}, but that truck may not be used.`,
  'waived-piece-gone': ({ piece }) => `${piece} was excused from the unloading order, but it no longer travels.`,
  'taken-is-no-case': ({ piece, by, on }) => `${piece} was taken along at the dock (${by}, ${on}), but it is no case on file.`,
  'end-group-gone': ({ group, end }) => `${group} was wanted at the ${end}, but none of it travels.`,
};

export const leftOver: Words['leftOver'] = {
  'no-truck': ({ trucks = [] }) =>
    `the tour has no truck that may be used${trucks.length === 0 ? '' : `: ${trucks.map(({ truck, why }) => `${truck} (${tell(against, why)})`).join(', ')}`}`,
  'bad-figure': ({ field, value, wanted }) => `on file ${field} is ${value}, wanted ${wanted}`,
  'too-high': ({ heightMm, mostMm }) => `higher than any truck lets in: ${heightMm} mm, and ${mostMm} mm is the most at door and roof`,
  'too-large': ({ lengthMm, widthMm, heightMm, massKg }) =>
    `larger or heavier than any truck takes: ${lengthMm} x ${widthMm} x ${heightMm} mm, ${massKg} kg`,
  'no-place': () => 'no place was found for it beside the others inside the limits',
  'no-place-beside-kept': () => 'no place was found for it in rows beside what is kept, inside the limits',
  'trucks-over-empty': () => 'every truck is over an axle limit when it is empty',
  'kept-breaks-rule': () => 'nothing is planned: what is kept in its place breaks a rule',
  'stays-behind': ({ reason, by, on }) => `it stays behind: ${reason} (${by}, ${on})`,
  'engine-says': ({ says }) => says,
};

export const tag: Words['tag'] = (inside) => `holds ${list(inside)}: out of service, not to be flown`;

const whole = (lb: number): string => Math.round(lb).toLocaleString('en-US');
const run = ({ first, last, spanFt, loadLb, limitLb }: BridgeRun): string =>
  `${first === last ? `axle ${first}` : `axles ${first} to ${last} over ${spanFt} ft`} ${whole(loadLb)} of ${whole(limitLb)} lb`;

export const bridge: Words['bridge'] = {
  'axle-places-not-on-file': () => 'The bridge formula is not worked out: the place of each axle is not on file.',
  'axle-load-not-known': () => 'The bridge formula is not worked out: the load of an axle is not known.',
  over: ({ runs }) => `Bridge formula: ${runs.map(run).join('; ')}.`,
  within: ({ count, nearest }) => `Bridge formula: all ${count} runs of axles are within it; the nearest is ${run(nearest)}.`,
};

/** What takes load off an axle, where moving a case does. */
function remedyFor({ axle }: AxleSubject): string {
  if (axle === 'gross') return '';
  return ` One heavy case further ${axle === 'trailer' || axle === 'rear' ? 'forward' : 'back'} takes load off it.`;
}

type TruckTable = Pick<
  Words['findings'],
  | 'kept-breaks-rule'
  | 'left-over'
  | 'order-waived'
  | 'wish-without-effect'
  | 'axle-over'
  | 'axle-nearly-over'
  | 'no-axle-figures'
  | 'bridge-formula'
  | 'bridge-formula-over'
  | 'freight-barred'
  | 'tagged-freight'
  | 'over-when-empty'
>;

export const truckFindings: TruckTable = {
  'kept-breaks-rule': ({ subjects: { piece }, breach }) => `${piece.name}: ${breachOf(breaches, breach)}.`,
  'left-over': ({ subjects: { piece }, why }) =>
    `${piece.name} ${why.code === 'stays-behind' ? 'is in no truck' : 'finds no place'}: ${tell(leftOver, why)}.`,
  'order-waived': ({ wish }) => tell(wishes, wish),
  'wish-without-effect': ({ wish }) => tell(wishes, wish),
  'axle-over': ({ subjects: { axle }, numbers: { loadKg, limitKg } }) =>
    `${axle.truck}: ${axles[axle.axle]} ${tonnes(loadKg)}, over its limit of ${tonnes(limitKg)}.`,
  'axle-nearly-over': ({ subjects: { axle }, numbers: { loadKg, limitKg } }) =>
    `${axle.truck}: ${axles[axle.axle]} ${tonnes(loadKg)} of ${tonnes(limitKg)}, ${kilograms(limitKg - loadKg)} left.${remedyFor(axle)}`,
  'no-axle-figures': ({ subjects: { truck } }) => `${truck.id}: no axle figures on file; its axle loads are not known.`,
  'bridge-formula': ({ subjects: { truck }, bridge: fact }) => `${truck.id}: ${tell(bridge, fact)}`,
  'bridge-formula-over': ({ subjects: { truck }, bridge: fact }) => `${truck.id}: ${tell(bridge, fact)}`,
  'freight-barred': ({ subjects: { piece, truck }, why }) =>
    `${piece.id} is to ride in ${truck.id} and must not be used: ${tell(against, why)}. Take another case, or clear it first.`,
  'tagged-freight': ({ subjects: { piece, inside } }) => `${piece.name} ${tag(inside.map((each) => each.id))}.`,
  'over-when-empty': ({ subjects: { truck, axle }, numbers: { loadKg, limitKg } }) =>
    `${truck.id} is over the limit of its ${axles[axle.axle]} when it is empty: ${kilograms(loadKg)} of ${kilograms(limitKg)}. Check the tare and the levers on file.`,
};
