import type { ReasonAgainst } from './reason-against.js';

/** What a reading of one slot of a cart says. `home`: where the box that was read belongs. */
export type SlotFinding =
  | { readonly code: 'agrees'; readonly slot: number; readonly expected: string }
  /** The right box, and it must not fly as things stand now. */
  | { readonly code: 'barred'; readonly slot: number; readonly expected: string; readonly why: ReasonAgainst }
  | { readonly code: 'empty'; readonly slot: number; readonly expected: string | null }
  | { readonly code: 'read-twice'; readonly slot: number; readonly expected: string | null; readonly found: string }
  | {
      readonly code: 'wrong-box';
      readonly slot: number;
      readonly expected: string | null;
      readonly found: string;
      readonly home: BoxHome;
      readonly isTwice: boolean;
    };

export type BoxHome =
  | { readonly code: 'nowhere' }
  | { readonly code: 'is-a-cart' }
  | { readonly code: 'this-cart'; readonly slot: number }
  | { readonly code: 'other-cart'; readonly cart: string | null; readonly load: string; readonly slot: number };
