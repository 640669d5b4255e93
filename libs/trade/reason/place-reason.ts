import type { ReasonAgainst } from './reason-against.js';

interface Placed {
  readonly what: 'box' | 'cart';
  readonly id: string;
}

interface Instead extends Placed {
  /** What takes the place in the best plan without it. */
  readonly other: string;
}

/** Why a box or a cart stands where a plan puts it, and not another: what it costs to do without it. */
export type PlaceReason =
  | { readonly code: 'empty' }
  | ({ readonly code: 'pinned' } & Placed)
  /** It may not be used as things stand now, whatever was so when the plan was made. */
  | ({ readonly code: 'barred-since'; readonly why: ReasonAgainst } & Placed)
  | ({ readonly code: 'no-other' } & Placed)
  /** `atLeast`: proved; equal to `moves` where the search was finished. */
  | ({ readonly code: 'more-moves'; readonly moves: number; readonly atLeast: number } & Instead)
  | ({ readonly code: 'more-carts'; readonly carts: number } & Instead)
  | ({ readonly code: 'due-sooner'; readonly boxes: number } & Instead)
  | ({ readonly code: 'more-used'; readonly uses: number } & Instead)
  | ({ readonly code: 'one-of-several' } & Instead)
  /** The list of the plan was not proved to be the shortest, and without this there is a shorter one. */
  | ({ readonly code: 'shorter-without'; readonly moves: number } & Instead);
