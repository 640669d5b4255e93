import type { OpenSlot, ReadFinding, ReasonAgainst } from '#trade';
import type { CartLoad, CartsResult } from '../contract/index.js';
import { matchCode, textOfCode } from './typed-code.js';

/** What the house says of a code that the plan does not settle. */
export interface HouseAnswer {
  readonly id: string;
  readonly kind: string;
  readonly model: string;
  /** Of a lot. */
  readonly count: number | null;
  /** Why it may not travel with this show; null where it may. */
  readonly whyNot: ReasonAgainst | null;
  /** Serials that the design of this show wants by name. */
  readonly wantedSerials: readonly string[];
}

export interface CartRead {
  readonly carts: Pick<CartsResult, 'loads' | 'leftOut' | 'floorBefore'>;
  readonly load: CartLoad;
  /** Serials of this load that were read, in the order in which they were. */
  readonly read: readonly string[];
  /** What must not fly as things stand now. */
  readonly barred: ReadonlyMap<string, ReasonAgainst>;
  /** What the house said of the code; null: it knows none such; left out: it was not asked. */
  readonly house?: HouseAnswer | null;
}

/** Ids that a code can stand for on the floor of a plan. */
function knownIds({ carts }: CartRead): string[] {
  const { loads, leftOut, floorBefore } = carts;
  return [
    ...loads.flatMap((each) => [...(each.cart === null ? [] : [each.cart]), ...serialsOf(each)]),
    ...leftOut.map((each) => each.serial),
    ...floorBefore.carts.flatMap((each) => [each.cart, ...each.boxes]),
    ...floorBefore.loose,
  ];
}

/** What a code says while the cart of a load is confirmed: cart and boxes come in any order. */
export function readCode(given: CartRead, code: string): ReadFinding {
  const { carts, load, house } = given;
  if (house) return house.kind === 'box' || house.kind === 'cart' ? readId(given, house.id) : notABox(house);
  const match = matchCode(code, knownIds(given));
  if (match.is === 'several') return { code: 'two-meant', text: textOfCode(code), ids: match.ids };
  if (match.is === 'none') return { code: 'unknown', text: textOfCode(code).slice(0, 60), isAsked: house === null };
  const isCart = [...carts.loads.map((each) => each.cart), ...carts.floorBefore.carts.map((each) => each.cart)].includes(match.id);
  if (!isCart) return readBox(given, match.id);
  return readCart(carts, load, match.id);
}

const notABox = ({ id, kind, model, count }: HouseAnswer): ReadFinding => ({ code: 'not-a-box', id, kind, model, count });

const readId = (given: CartRead, id: string): ReadFinding =>
  given.house?.kind === 'cart' ? readCart(given.carts, given.load, id) : readBox(given, id);

function readCart({ loads }: CartRead['carts'], load: CartLoad, cart: string): ReadFinding {
  if (load.cart === cart) return { code: 'this-cart', cart };
  const other = loads.find((each) => each.cart === cart);
  return other ? { code: 'other-cart', cart, load: other.id } : { code: 'cart-not-planned', cart };
}

/** What must not fly is said before all else; then right, then where it belongs, then what it could stand for. */
function readBox(given: CartRead, box: string): ReadFinding {
  const { carts, load, read, barred } = given;
  const slot = load.boxes.find((each) => each.serial === box)?.slot ?? null;
  const why = barred.get(box) ?? carts.leftOut.find((each) => each.serial === box)?.fact ?? (slot === null ? whyNotOf(given, box) : null);
  if (why) return { code: 'must-not-fly', box, slot, why };
  if (slot !== null) return { code: read.includes(box) ? 'read-before' : 'right', box, slot };
  const open = openSlot(load, read);
  const home = carts.loads.find((each) => serialsOf(each).includes(box));
  if (home) {
    const there = home.boxes.find((each) => each.serial === box)?.slot ?? 0;
    return { code: 'elsewhere', box, cart: home.cart, load: home.id, slot: there, open };
  }
  return readStranger(given, box, open);
}

const whyNotOf = ({ house }: CartRead, box: string): ReasonAgainst | null => (house?.id === box ? house.whyNot : null);

/** A box that the plan does not fly. */
function readStranger({ load, read, house }: CartRead, box: string, open: OpenSlot): ReadFinding {
  if (house?.id !== box) return { code: 'ask-the-house', box, open };
  const { model } = house;
  const alike = load.boxes.filter((each) => each.model === model && each.serial !== null && !read.includes(each.serial));
  if (alike.length === 0) return { code: 'wrong-model', box, model, open };
  const free = alike.filter((each) => !house.wantedSerials.includes(each.serial ?? ''));
  const place = (boxes: typeof alike): OpenSlot => ({
    slot: open.slot !== null && boxes.some((each) => each.slot === open.slot) ? open.slot : boxes.length === 1 ? boxes[0]!.slot : null,
    expected: boxes.flatMap((each) => each.serial ?? []),
  });
  return free.length > 0
    ? { code: 'same-model', box, model, open: place(free) }
    : { code: 'wanted-by-serial', box, model, open: place(alike) };
}

/** The slot that comes next: the only one that is open, or the next one where they were read top down so far. */
function openSlot(load: CartLoad, read: readonly string[]): OpenSlot {
  const open = load.boxes.filter((each) => each.serial === null || !read.includes(each.serial));
  const expected = open.flatMap((each) => each.serial ?? []);
  const isTopDown = read.every((each, index) => load.boxes[index]?.serial === each);
  const next = open.length === 1 || (isTopDown && read.length > 0) ? open[0] : undefined;
  return next ? { slot: next.slot, expected: next.serial === null ? [] : [next.serial] } : { slot: null, expected };
}

/** How far the reading of a cart is. */
export type CartProgress =
  | { readonly is: 'open'; readonly left: readonly { readonly slot: number; readonly serial: string | null }[] }
  /** Read from the top down: which slot holds what is known. */
  | { readonly is: 'in order'; readonly serials: readonly string[] }
  /** All were read, in another order: how they stand is still to be said. */
  | { readonly is: 'all there'; readonly serials: readonly string[]; readonly asRead: readonly string[] };

/** Whether all boxes of a load were read, and whether their order is known by it. A place without a box is never read. */
export function progressOf(load: CartLoad, read: readonly string[]): CartProgress {
  const left = load.boxes.filter((each) => each.serial === null || !read.includes(each.serial));
  if (left.length > 0) return { is: 'open', left: left.map(({ slot, serial }) => ({ slot, serial })) };
  const serials = serialsOf(load);
  return serials.every((each, index) => read[index] === each) ? { is: 'in order', serials } : { is: 'all there', serials, asRead: read };
}

const serialsOf = (load: CartLoad): string[] => load.boxes.flatMap((each) => (each.serial === null ? [] : [each.serial]));
