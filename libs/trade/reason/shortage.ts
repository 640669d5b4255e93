import type { ReasonAgainst } from './reason-against.js';

/** Why a fleet cannot serve a design: boxes wanted by serial that cannot be had, models and carts that are too few. */
export type ShortageFact =
  | { readonly code: 'wanted-twice'; readonly box: string }
  | { readonly code: 'may-not-be-used'; readonly box: string; readonly why: ReasonAgainst }
  /** Under a box of another tour where nothing speaks against the cart. */
  | { readonly code: 'cannot-be-reached'; readonly box: string; readonly cart: string; readonly why: ReasonAgainst | null }
  | { readonly code: 'not-on-the-floor'; readonly box: string; readonly case: string | null }
  | { readonly code: 'too-few-boxes'; readonly models: readonly { readonly model: string; readonly missing: number }[] }
  | { readonly code: 'no-cart-may-carry'; readonly load: string }
  | { readonly code: 'too-few-carts'; readonly load: string; readonly loads: number; readonly carts: number }
  /** Carts of the depot that carry nothing for this tour, with what speaks against each. */
  | { readonly code: 'carts-not-free'; readonly carts: readonly { readonly cart: string; readonly why: ReasonAgainst }[] };
