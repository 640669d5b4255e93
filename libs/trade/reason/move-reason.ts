import type { CartSubject, LoadSubject } from '../subject/index.js';

/** Why a box is moved. */
export type MoveReason =
  | { readonly code: 'into-slot'; readonly load: LoadSubject; readonly slot: number }
  /** It must not ride in a load and leaves the stack. */
  | { readonly code: 'out-of-service' }
  /** It waits for a move of its own: into a load, or onto a cart that carries none. */
  | { readonly code: 'set-aside'; readonly load: LoadSubject }
  | { readonly code: 'set-aside-for-cart'; readonly cart: CartSubject }
  | { readonly code: 'makes-room'; readonly load: LoadSubject }
  | { readonly code: 'on-wanted-box' };
