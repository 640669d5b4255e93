import type { AllocationAnswer, BoxShortage } from '#cart-allocation';
import type { PlanInputs } from '../inputs/index.js';

/** Why the fleet cannot serve the design, box by box; null where it can. */
export function reasonOf(inputs: PlanInputs, { short = [], cartsShort }: AllocationAnswer): string | null {
  const pinned = short.filter((each) => each.serial !== undefined).map((each) => pinnedSentence(inputs, each));
  const models = short.filter((each) => each.serial === undefined).map((each) => `${each.missing} ${each.model}`);
  const sentences = [
    ...pinned,
    ...(models.length > 0 ? [`Too few boxes that may be used: ${models.join(', ')} short.`] : []),
    ...(cartsShort?.code === 'no cart may carry it' ? [`No cart may carry ${cartsShort.load}.`] : []),
    ...(cartsShort?.code === 'no cart is left'
      ? [`Too few carts: ${cartsShort.loads} loads, ${cartsShort.carts} carts; none is left for ${cartsShort.load}.`]
      : []),
  ];
  return sentences.length === 0 ? null : sentences.join(' ');
}

function pinnedSentence({ items, availability, file }: PlanInputs, { serial, code }: BoxShortage): string {
  if (code === 'wanted twice') return `${serial} is wanted in two places: one box cannot be in both.`;
  const reason = availability.get(serial!)?.reason;
  if (reason) return `${serial} is wanted but may not be used: ${reason}.`;
  const cart = file.items.find((item) => item.kind === 'cart' && item.stack?.includes(serial!));
  if (cart)
    return `${serial} is wanted but cannot be reached: it stands on ${cart.id}, ${availability.get(cart.id)?.reason ?? 'under a box of another tour'}.`;
  const holder = items.get(serial!)?.in;
  return `${serial} is wanted but is not on the floor${holder === undefined ? '' : `: it lies in ${holder}`}.`;
}
