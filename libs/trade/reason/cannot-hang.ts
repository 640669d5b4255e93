/** Why a bridle, or a hang with the line of a pull-back, cannot hang as it is drawn. */
export type CannotHang =
  | { readonly code: 'bridle-legs' }
  | { readonly code: 'anchor-not-above' }
  | { readonly code: 'hook-would-swing' }
  | { readonly code: 'leg-would-push' }
  | { readonly code: 'wants-tilt' }
  | { readonly code: 'wants-tension' }
  | { readonly code: 'no-such-box'; readonly position: number }
  | { readonly code: 'anchor-at-point' }
  | { readonly code: 'drawn-too-far' }
  | { readonly code: 'line-through-pick' }
  | { readonly code: 'line-would-push' }
  | { readonly code: 'line-lifts'; readonly picks: number };

interface At<Code extends string> {
  readonly code: Code;
  /** For example "hole a" or "joint 3". */
  readonly subject: string;
  readonly date: null;
}

/** What a hang by itself has to be told of: forces that cannot be, or are above what is rated. Newtons, kilograms at the hook of a hoist. */
export type HangRemark =
  | (At<'cannot-hang-like-this'> & { readonly hole: string; readonly pushNewtons: number })
  | (At<'over-rated-load'> & {
      readonly part: 'hook' | 'rear link' | 'front pin';
      /** The hole of a hook; the position of the box below a joint. */
      readonly at: string | number;
      readonly value: number;
      readonly rated: number;
    })
  | (At<'reversed-link'> & { readonly position: number; readonly newtons: number })
  | (At<'front-pins-push'> & { readonly position: number })
  | (At<'no-rated-value'> & { readonly boxes: number; readonly of: number });
