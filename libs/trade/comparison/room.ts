/** What a trim height is measured to. */
export type TrimMark = 'bottom edge' | 'grid' | 'top';

/** What of a hang comes near to another: its grid, a box, a frame between boxes, or a loaded cart that rolls in under it. */
export type HangPart =
  | { readonly code: 'grid' }
  | { readonly code: 'box'; readonly position: number }
  | { readonly code: 'frame'; readonly id: string }
  | { readonly code: 'cart' };

/** What stands between the mark of the trim height and the point, from below. */
export type RoomPart = 'grid' | 'shackles' | 'slings' | 'hooks' | 'hoist body' | 'bridle';
