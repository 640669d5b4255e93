import type { CartLoad } from '../contract/index.js';

/** A thing that travelled with a show, as the register has it now. */
export interface Travelling {
  readonly id: string;
  readonly kind: string;
  readonly model: string;
  /** Cart that it stands on, and where: 1 at the top. */
  readonly cart: string | null;
  readonly slot: number | null;
}

/** Somebody saw a thing, or the cart that it rode on. `moment`: ISO 8601. */
export interface Sighting {
  readonly item: string;
  readonly moment: string;
  readonly by: string;
  readonly place: LastSeen['place'];
}

export interface LastSeen {
  readonly moment: string;
  readonly by: string;
  /** The cart that was seen, where it was not the thing itself. */
  readonly with: string | null;
  readonly place:
    | { readonly code: 'row'; readonly way: 'in' | 'off' | 'in for home'; readonly truck: string; readonly row: number }
    | { readonly code: 'record'; readonly sentence: string };
}

export interface ReturnPiece extends Travelling {
  /** Cart load that it flew in, or that the cart carried. */
  readonly load: string | null;
  readonly back: { readonly moment: string; readonly by: string } | null;
  /** Of what is not back: where it, or the cart that it rode on, was seen last. */
  readonly seen: LastSeen | null;
}

/** What of a show is back, and of the rest the last that anybody saw; in the order of the carts, then by kind and name. */
export function whatIsBack(
  travelling: readonly Travelling[],
  loads: readonly Pick<CartLoad, 'id' | 'cart' | 'boxes'>[],
  returned: readonly { readonly item: string; readonly moment: string; readonly by: string }[],
  sightings: readonly Sighting[],
): readonly ReturnPiece[] {
  const loadOf = new Map(
    loads.flatMap(({ id, cart, boxes }) =>
      [cart, ...boxes.map((each) => each.serial)].flatMap((each) => (each ? [[each, id] as const] : [])),
    ),
  );
  const cartOf = new Map(
    loads.flatMap(({ cart, boxes }) => boxes.flatMap(({ serial }) => (serial && cart ? [[serial, cart] as const] : []))),
  );
  const back = new Map(newestLast(returned).map((each) => [each.item, { moment: each.moment, by: each.by }]));
  const seen = new Map(newestLast(sightings).map((each) => [each.item, each]));
  const lastOf = ({ id, cart }: Travelling): LastSeen | null => {
    const last = newestLast([id, cartOf.get(id), cart].flatMap((each) => (each ? (seen.get(each) ?? []) : []))).at(-1);
    return last ? { moment: last.moment, by: last.by, with: last.item === id ? null : last.item, place: last.place } : null;
  };
  const order = new Map(loads.map(({ id }, index) => [id, index]));
  const placeOf = ({ load }: ReturnPiece) => (load === null ? loads.length : (order.get(load) ?? loads.length));
  const isCart = ({ kind }: ReturnPiece) => Number(kind !== 'cart');
  return travelling
    .map((each): ReturnPiece => {
      const came = back.get(each.id) ?? null;
      return { ...each, load: loadOf.get(each.id) ?? null, back: came, seen: came ? null : lastOf(each) };
    })
    .sort(
      (a, b) =>
        placeOf(a) - placeOf(b) ||
        isCart(a) - isCart(b) ||
        (a.load === null ? compare(a.kind, b.kind) : (a.slot ?? 0) - (b.slot ?? 0)) ||
        compare(a.id, b.id),
    );
}

const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

const newestLast = <T extends { readonly moment: string }>(all: readonly T[]): readonly T[] =>
  [...all].sort((a, b) => compare(a.moment, b.moment));
