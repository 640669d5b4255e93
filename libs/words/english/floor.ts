import type { BoxHome, OpenSlot, ReasonAgainst } from '#trade';
import { type Words, tell } from '../table/index.js';
import { against } from './findings/index.js';

const belongs = (expected: string | null, slot: number): string =>
  expected === null ? `nothing belongs in slot ${slot}` : `${expected} belongs there`;

function homeWords(found: string, home: BoxHome): string {
  switch (home.code) {
    case 'nowhere':
      return `${found} is in no cart of this show`;
    case 'is-a-cart':
      return `${found} is a cart: read the boxes on it`;
    case 'this-cart':
      return `${found} belongs in slot ${home.slot} of this cart`;
    case 'other-cart':
      return `${found} belongs in ${home.cart ?? home.load}, slot ${home.slot} (${home.load})`;
  }
}

export const moves: Words['moves'] = {
  'into-slot': ({ load, slot }) => `slot ${slot} of ${load.name}`,
  'out-of-service': () => 'stays behind: out of service, or kept for another',
  'set-aside': ({ load }) => `set aside for ${load.name}`,
  'set-aside-for-cart': ({ cart }) => `set aside for ${cart.id}`,
  'makes-room': ({ load }) => `makes room for ${load.name}`,
  'on-wanted-box': () => 'stands on a box that is wanted',
};

export const slots: Words['slots'] = {
  agrees: ({ slot, expected }) => `Slot ${slot} agrees: ${expected}.`,
  barred: ({ slot, expected, why }) => `Slot ${slot}: ${expected} must not fly: ${floorAgainst(why)}.`,
  empty: ({ slot, expected }) => `Slot ${slot} is empty: ${belongs(expected, slot)}.`,
  'read-twice': ({ slot, expected, found }) => `Slot ${slot}: ${found} was read twice; ${belongs(expected, slot)}.`,
  'wrong-box': ({ slot, expected, found, home, isTwice }) =>
    `Wrong box in slot ${slot}: ${found}; ${belongs(expected, slot)}. ${homeWords(found, home)}${isTwice ? '; it was read twice' : ''}.`,
};

const here = ({ slot, expected }: OpenSlot): string => {
  const names = expected.join(', ');
  if (names === '') return 'No box is planned for what is open here';
  if (slot !== null) return `Slot ${slot}: ${names} belongs there`;
  return expected.length === 1 ? `${names} is still to be read here` : `Still to be read here: ${names}`;
};

/** What is read that is no box, in the words of the trade. */
const things: Readonly<Record<string, string>> = {
  grid: 'a grid',
  hoist: 'a hoist',
  shackle: 'shackles',
  sling: 'slings',
  pin: 'pins',
  loom: 'a loom',
  case: 'a trunk',
  truck: 'a truck',
  frame: 'a frame',
  cell: 'a load cell',
  control: 'hoist control',
  aid: 'a chain bag or tag line',
};

export const reads: Words['reads'] = {
  right: ({ box, slot }) => `${box} is right: slot ${slot}.`,
  'read-before': ({ box, slot }) => `${box} was read already: slot ${slot}.`,
  'this-cart': ({ cart }) => `${cart} is the right cart.`,
  'same-model': ({ box, model, open }) =>
    `${box} is the same model (${model}), in date and free. ${here(open)}. Nobody wants that one by its serial.`,
  'ask-the-house': ({ box, open }) =>
    `Stop: ${box} is in no cart of this show. ${here(open)}. Whether ${box} could stand for it is only known with a network.`,
  'wanted-by-serial': ({ box, model, open }) =>
    `Stop: ${box} is the same model (${model}), but the design wants this place by its serial. ${here(open)}.`,
  'wrong-model': ({ box, model, open }) => `Stop: ${box} is another model (${model}). ${here(open)}.`,
  elsewhere: ({ box, cart, load, slot, open }) => `Stop: ${box} belongs in ${cart ?? load}, slot ${slot} (${load}). ${here(open)}.`,
  'must-not-fly': ({ box, slot, why }) =>
    `Stop: ${box} must not fly: ${floorAgainst(why)}.${slot === null ? '' : ` It is planned for slot ${slot}: find another box.`}`,
  'other-cart': ({ cart, load }) => `${cart} is another cart: ${load}.`,
  'cart-not-planned': ({ cart }) => `Stop: ${cart} carries nothing for this show.`,
  'not-a-box': ({ id, kind, model, count: pieces }) =>
    `Stop: ${id} is ${pieces === null ? (things[kind] ?? kind) : `a lot of ${pieces} ${things[kind] ?? kind}`} (${model}), not a box.`,
  'two-meant': ({ text, ids }) => `${text} can mean ${ids.join(' or ')}: type it whole.`,
  unknown: ({ text, isAsked }) =>
    isAsked
      ? `Stop: nothing on file is called ${text}. A label of somebody else, or damaged: read the serial on the box and type it.`
      : `Stop: ${text} is not of this show. Without a network it cannot be said what it is.`,
};

const count = (moves: number, bound: number): string =>
  `${moves} box ${moves === 1 ? 'move' : 'moves'}${moves <= bound ? '; no shorter list exists' : bound > 0 ? `; at least ${bound} are needed` : ''}.`;

export const work: Words['work'] = {
  done: () => 'Every cart of the plan stands as it is wanted.',
  'as-planned': ({ moves, bound }) => count(moves, bound),
  anew: ({ moves, bound }) => `The floor is not as the list left it. From here: ${count(moves, bound)}`,
  'must-not-fly': ({ boxes }) =>
    `${boxes.map(({ box, load, why }) => `${box} of ${load} must not fly: ${floorAgainst(why)}.`).join(' ')} Find another box for it on the show’s page, or plan again.`,
  'boxes-gone': ({ boxes }) => `${boxes.join(', ')} of the plan is no longer on this floor. Plan again.`,
  'cannot-be-built': () => 'From this floor the plan cannot be built: boxes or carts are short. Plan again.',
  'failed-its-check': () => 'The list did not pass its check and is not shown. Plan again.',
  'between-shows': ({ moves, bound }) =>
    `${moves} box moves from the floor that the show before leaves${moves <= bound ? '; no shorter list exists' : `; at least ${bound} are needed`}.`,
};

/** On the floor the state and the remark stand in one breath. */
function floorAgainst(why: ReasonAgainst): string {
  return why.code === 'state' ? `${why.state}${why.remark ? `, ${why.remark}` : ''}` : tell(against, why);
}

export const restacked: Words['restacked'] = {
  'new-load': ({ load }) => `the show before has no load ${load}`,
  'other-models': ({ wanted, before }) => `the design wants ${wanted.join(', ')} here, the show before ${before.join(', ')}`,
  'other-boxes': ({ boxes }) => `other boxes in it: ${boxes.map((each) => each ?? 'none').join(', ')}`,
};
