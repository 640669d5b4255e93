import type { ReasonAgainst } from './reason-against.js';

/** What belongs in a slot of the cart that is being read; `slot` null where several are still open. */
export interface OpenSlot {
  readonly slot: number | null;
  readonly expected: readonly string[];
}

/** What a code says that was read while a cart is confirmed: right, the same model, or wrong; or that it is no box of this show. */
export type ReadFinding =
  | { readonly code: 'right'; readonly box: string; readonly slot: number }
  | { readonly code: 'read-before'; readonly box: string; readonly slot: number }
  | { readonly code: 'this-cart'; readonly cart: string }
  /** May it be taken in: the same model, in date, free, and nobody wants the planned one by its serial. */
  | { readonly code: 'same-model'; readonly box: string; readonly model: string; readonly open: OpenSlot }
  /** The same model; whether it may fly, or whether the planned one is wanted by its serial, only the house knows. */
  | { readonly code: 'ask-the-house'; readonly box: string; readonly open: OpenSlot }
  | { readonly code: 'wanted-by-serial'; readonly box: string; readonly model: string; readonly open: OpenSlot }
  | { readonly code: 'wrong-model'; readonly box: string; readonly model: string; readonly open: OpenSlot }
  /** It belongs in another load of this show. */
  | {
      readonly code: 'elsewhere';
      readonly box: string;
      readonly cart: string | null;
      readonly load: string;
      readonly slot: number;
      readonly open: OpenSlot;
    }
  | { readonly code: 'must-not-fly'; readonly box: string; readonly slot: number | null; readonly why: ReasonAgainst }
  | { readonly code: 'other-cart'; readonly cart: string; readonly load: string }
  | { readonly code: 'cart-not-planned'; readonly cart: string }
  | { readonly code: 'not-a-box'; readonly id: string; readonly kind: string; readonly model: string; readonly count: number | null }
  | { readonly code: 'two-meant'; readonly text: string; readonly ids: readonly string[] }
  /** `isAsked`: the house does not know it either. */
  | { readonly code: 'unknown'; readonly text: string; readonly isAsked: boolean };
