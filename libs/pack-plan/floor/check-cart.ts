import type { BoxHome, ReasonAgainst, SlotFinding } from '#trade';
import { type Words, english, tell } from '#words';
import type { CartLoad, PackPlan } from '../contract/index.js';

export interface SlotVerdict {
  readonly slot: number;
  readonly expected: string | null;
  readonly found: string | null;
  readonly agrees: boolean;
  readonly sentence: string;
  readonly fact: SlotFinding;
}

type Places = ReadonlyMap<string, { readonly load: CartLoad; readonly slot: number }>;

/**
 * Serials read off a cart, top first, against the load it should carry: which slot is wrong, what belongs there, and where the found box belongs.
 * `barred`: what must not fly as things stand now; the right box in the right slot does not agree when it is among them.
 */
export function checkCart(
  plan: Pick<PackPlan, 'carts'>,
  load: CartLoad,
  serials: readonly string[],
  words: Words = english,
  barred: ReadonlyMap<string, ReasonAgainst> = new Map(),
): readonly SlotVerdict[] {
  const places: Places = new Map(
    plan.carts.loads.flatMap((each) =>
      each.boxes.filter((box) => box.serial !== null).map((box) => [box.serial!, { load: each, slot: box.slot }] as const),
    ),
  );
  const slots = Math.max(load.boxes.length, serials.length);
  return Array.from({ length: slots }, (_, index): SlotVerdict => {
    const expected = load.boxes[index]?.serial ?? null;
    const found = asOnFile(serials[index]?.trim() || null, places);
    const isTwice = serials.filter((each) => each.trim() === found).length > 1;
    const why = expected !== null && expected === found ? barred.get(expected) : undefined;
    const fact: SlotFinding = why
      ? { code: 'barred', slot: index + 1, expected: expected!, why }
      : slotFinding(plan, load, places, { slot: index + 1, expected, found, isTwice });
    return { slot: index + 1, expected, found, agrees: fact.code === 'agrees', sentence: tell(words.slots, fact), fact };
  });
}

/** Capitals do not count where only one serial can be meant. */
function asOnFile(found: string | null, places: Places): string | null {
  if (found === null || places.has(found)) return found;
  const alike = [...places.keys()].filter((each) => each.toLowerCase() === found.toLowerCase());
  return alike.length === 1 ? alike[0]! : found;
}

function slotFinding(
  plan: Pick<PackPlan, 'carts'>,
  load: CartLoad,
  places: Places,
  {
    slot,
    expected,
    found,
    isTwice,
  }: { readonly slot: number; readonly expected: string | null; readonly found: string | null; readonly isTwice: boolean },
): SlotFinding {
  if (found === null) return { code: 'empty', slot, expected };
  if (found === expected) return { code: 'agrees', slot, expected };
  if (isTwice && !places.has(found)) return { code: 'read-twice', slot, expected, found };
  return { code: 'wrong-box', slot, expected, found, home: homeOf(plan, load, places, found), isTwice };
}

function homeOf({ carts }: Pick<PackPlan, 'carts'>, load: CartLoad, places: Places, found: string): BoxHome {
  const place = places.get(found);
  if (!place) return carts.loads.some((each) => each.cart === found) ? { code: 'is-a-cart' } : { code: 'nowhere' };
  if (place.load === load) return { code: 'this-cart', slot: place.slot };
  return { code: 'other-cart', cart: place.load.cart, load: place.load.id, slot: place.slot };
}
