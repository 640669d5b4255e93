import type { CartLoad, PackPlan } from '../contract/index.js';

export interface SlotVerdict {
  readonly slot: number;
  readonly expected: string | null;
  readonly found: string | null;
  readonly agrees: boolean;
  readonly sentence: string;
}

/** Serials read off a cart, top first, against the load it should carry: which slot is wrong, what belongs there, and where the found box belongs. */
export function checkCart(plan: Pick<PackPlan, 'carts'>, load: CartLoad, serials: readonly string[]): readonly SlotVerdict[] {
  const places = new Map(
    plan.carts.loads.flatMap((each) =>
      each.boxes.filter((box) => box.serial !== null).map((box) => [box.serial!, { load: each, slot: box.slot }] as const),
    ),
  );
  const slots = Math.max(load.boxes.length, serials.length);
  return Array.from({ length: slots }, (_, index): SlotVerdict => {
    const expected = load.boxes[index]?.serial ?? null;
    const found = asOnFile(serials[index]?.trim() || null, places);
    const agrees = expected !== null && expected === found;
    return {
      slot: index + 1,
      expected,
      found,
      agrees,
      sentence: agrees
        ? `Slot ${index + 1} agrees: ${expected}.`
        : wrongSentence(
            index + 1,
            expected,
            found,
            found === null ? undefined : places.get(found),
            load,
            plan,
            serials.filter((each) => each.trim() === found).length > 1,
          ),
    };
  });
}

/** Capitals do not count where only one serial can be meant. */
function asOnFile(found: string | null, places: ReadonlyMap<string, unknown>): string | null {
  if (found === null || places.has(found)) return found;
  const alike = [...places.keys()].filter((each) => each.toLowerCase() === found.toLowerCase());
  return alike.length === 1 ? alike[0]! : found;
}

function wrongSentence(
  slot: number,
  expected: string | null,
  found: string | null,
  place: { load: CartLoad; slot: number } | undefined,
  load: CartLoad,
  plan: Pick<PackPlan, 'carts'>,
  isTwice: boolean,
): string {
  const belongs = expected === null ? `nothing belongs in slot ${slot}` : `${expected} belongs there`;
  if (found === null) return `Slot ${slot} is empty: ${belongs}.`;
  if (isTwice && place === undefined) return `Slot ${slot}: ${found} was read twice; ${belongs}.`;
  const isCart = plan.carts.loads.some((each) => each.cart === found);
  const home =
    place === undefined
      ? isCart
        ? `${found} is a cart: read the boxes on it`
        : `${found} is in no cart of this show`
      : place.load === load
        ? `${found} belongs in slot ${place.slot} of this cart`
        : `${found} belongs in ${place.load.cart ?? place.load.id}, slot ${place.slot} (${place.load.id})`;
  return `Wrong box in slot ${slot}: ${found}; ${belongs}. ${home}${isTwice ? '; it was read twice' : ''}.`;
}
