import type { AllocationAnswer, BoxShortage } from '#cart-allocation';
import type { ShortageFact } from '#trade';
import type { PlanInputs } from '../inputs/index.js';

/** Why the fleet cannot serve the design, box by box; nothing where it can. */
export function shortagesOf(inputs: PlanInputs, { short = [], cartsShort }: AllocationAnswer): readonly ShortageFact[] {
  const models = short.filter((each) => each.serial === undefined).map(({ model, missing }) => ({ model, missing }));
  return [
    ...short.filter((each) => each.serial !== undefined).map((each) => pinnedShortage(inputs, each)),
    ...(models.length > 0 ? [{ code: 'too-few-boxes' as const, models }] : []),
    ...(cartsShort?.code === 'no cart may carry it' ? [{ code: 'no-cart-may-carry' as const, load: cartsShort.load }] : []),
    ...(cartsShort?.code === 'no cart is left'
      ? [{ code: 'too-few-carts' as const, load: cartsShort.load, loads: cartsShort.loads, carts: cartsShort.carts }]
      : []),
    ...(cartsShort ? cartsNotFree(inputs) : []),
  ];
}

/** Carts of the depot that carry nothing for this tour, each with its reason. */
function cartsNotFree({ file, availability }: PlanInputs): ShortageFact[] {
  const carts = file.items.flatMap((item) => {
    const why = item.kind === 'cart' && item.depot === file.tour.depot ? availability.get(item.id)?.reason : null;
    return why ? [{ cart: item.id, why }] : [];
  });
  return carts.length === 0 ? [] : [{ code: 'carts-not-free', carts }];
}

function pinnedShortage({ items, availability, file }: PlanInputs, { serial, code }: BoxShortage): ShortageFact {
  const box = serial!;
  if (code === 'wanted twice') return { code: 'wanted-twice', box };
  const why = availability.get(box)?.reason;
  if (why) return { code: 'may-not-be-used', box, why };
  const cart = file.items.find((item) => item.kind === 'cart' && item.stack?.includes(box));
  if (cart) return { code: 'cannot-be-reached', box, cart: cart.id, why: availability.get(cart.id)?.reason ?? null };
  return { code: 'not-on-the-floor', box, case: items.get(box)?.in ?? null };
}
