import { placeName } from '#trade';
import { type Words, tell } from '../../table/index.js';
import { plural, span } from '../parts/index.js';

export const exceptions: Words['exceptions'] = {
  'part-load': ({ boxes, capacity }) => `part load: ${boxes} of ${capacity} boxes`,
  'no-cart': () => 'no cart is left for it; none of its boxes is packed',
  'mixed-models': ({ models }) => `mixed models: ${models.join(' and ')}`,
  'no-box': ({ slot, model }) => `slot ${slot}: no ${model} to be had`,
};

const kitOf = (owner: string | null): string => (owner === null ? 'kit of others' : `kit of ${owner}`);

export const against: Words['against'] = {
  'paper-missing': ({ owner }) => `${kitOf(owner)}: nobody has seen its paper, and the safety officer has not cleared it`,
  'given-back': ({ owner, on }) => `${kitOf(owner)}, given back on ${on}`,
  'not-on-file': () => 'it is no longer on file',
  state: ({ state, remark }) => (remark ? `${state}: ${remark}` : state),
  'not-accepted': ({ of }) => (of === 'item' ? 'it waits for the safety officer' : 'its model waits for the safety officer'),
  'other-depot': ({ depot, wanted }) => `at ${depot}, not at ${wanted}`,
  promised: ({ to, from, until }) => `promised to ${to} ${span(from, until)}`,
  hired: ({ from, until }) => `hired in ${span(from, until)} only`,
  'no-record': () => 'no record of an examination',
  failed: () => 'failed its last examination',
  blocked: () => 'blocked by an event since its last examination',
  'out-of-date': ({ dueOn }) => `examination due on ${dueOn}`,
  'not-judged': ({ places }) =>
    `${places.map((each) => placeName(each)).join(' and ')} ${places.length === 1 ? 'is' : 'are'} not judged: no examination rules on file, and no answer of the safety officer holds`,
};

export const keptBack: Words['keptBack'] = {
  'paper-missing': ({ owner }) => `${kitOf(owner)}, its paper not seen`,
  'given-back': ({ owner, on }) => `${kitOf(owner)}, given back on ${on}`,
  state: ({ state }) => state,
  'not-accepted': ({ of }) => (of === 'item' ? 'new, and waits for the safety officer' : 'of a model that waits for the safety officer'),
  'other-depot': ({ depot }) => `at ${depot}`,
  hired: ({ from, until }) => `hired in from ${from} to ${until} only`,
  promised: ({ to }) => `promised to ${to}`,
  examination: ({ state }) => state,
};

export const shortages: Words['shortages'] = {
  'wanted-twice': ({ box }) => `${box} is wanted in two places: one box cannot be in both.`,
  'may-not-be-used': ({ box, why }) => `${box} is wanted but may not be used: ${tell(against, why)}.`,
  'cannot-be-reached': ({ box, cart, why }) =>
    `${box} is wanted but cannot be reached: it stands on ${cart}, ${why ? tell(against, why) : 'under a box of another tour'}.`,
  'not-on-the-floor': (each) => `${each.box} is wanted but is not on the floor${each.case === null ? '' : `: it lies in ${each.case}`}.`,
  'too-few-boxes': ({ models }) =>
    `Too few boxes that may be used: ${models.map((each) => `${each.missing} ${each.model}`).join(', ')} short.`,
  'no-cart-may-carry': ({ load }) => `No cart may carry ${load}.`,
  'too-few-carts': ({ loads, carts }) => `Too few carts: ${loads} loads, ${plural(carts, 'cart')} that may carry.`,
  'carts-not-free': ({ carts }) => `Not to be had: ${carts.map(({ cart, why }) => `${cart} (${tell(against, why)})`).join(', ')}.`,
};

type CartTable = Pick<
  Words['findings'],
  'design-not-served' | 'box-moves-mismatch' | 'box-moves' | 'model-short' | 'out-of-service-in-cart' | 'cart-exception'
>;

export const cartFindings: CartTable = {
  'design-not-served': ({ shortages: all }) =>
    all.length === 0 ? 'The fleet cannot serve this design.' : all.map((each) => tell(shortages, each)).join(' '),
  'box-moves-mismatch': ({ subjects: { found } }) =>
    `The box moves did not pass their check (${found.text}): a fault of this program. Do not use this plan; make it again, and report it.`,
  'box-moves': ({ numbers: { moves, bound }, isProved }) => {
    if (!isProved) return `${plural(moves, 'box move')}; at least ${bound} are needed. A shorter list may exist.`;
    return moves === 0
      ? 'Every cart stands as it is wanted: no box has to be moved.'
      : `${plural(moves, 'box move')}; no shorter list exists.`;
  },
  'model-short': ({ subjects: { model, show }, numbers: { missing }, days, keptBack: boxes }) => {
    const why = boxes.map((each) => `${each.box} is ${tell(keptBack, each.why)}`).join('; ');
    return `${model.id} is ${plural(missing, 'box', 'boxes')} short ${span(days.from, days.to)} (${show.name}). ${why ? `${why}. ` : ''}Free one of these or hire in.`;
  },
  'out-of-service-in-cart': ({ subjects: { box, slot, load, remark }, state }) => {
    const then = load ? `It comes off; the cart is wanted for ${load.name}.` : 'The cart is not used in this plan and stays behind.';
    return `${slot.cart} slot ${slot.slot} holds ${box.id}: ${state}${remark ? `, ${remark.text}` : ''}. ${then}`;
  },
  'cart-exception': ({ subjects: { cart, load }, exception }) =>
    `${load.name}${cart.kind === 'cart' ? ` (${cart.id})` : ''}: ${tell(exceptions, exception)}.`,
};
