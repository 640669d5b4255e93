/** What a box move costs, by where it is made; the figures only count against one another. */
export interface MoveWeights {
  /** At prep, before the first show. */
  readonly depot: number;
  /** Between shows, at the dock. */
  readonly dock: number;
}

/** How a load came to stand at a show: nothing is lifted for it, or boxes are. */
export type HowItStands =
  | { readonly code: 'stood-already' }
  /** It stands since an earlier show; `as` is the load that it was there. */
  | { readonly code: 'rolls-on'; readonly since: string; readonly as: string }
  /** It was made ready at an earlier show. */
  | { readonly code: 'was-made-ready'; readonly at: string }
  /** Boxes are lifted off what stood there, and nothing is set on. */
  | { readonly code: 'cut-down'; readonly off: number }
  /** No cart stood with these models in this order. */
  | { readonly code: 'new-stack' }
  /** Such stacks stand, and other loads have them. */
  | { readonly code: 'stacks-taken'; readonly by: readonly string[] }
  /** Such a stack stands with boxes that must not fly here. */
  | { readonly code: 'box-may-not-fly'; readonly cart: string; readonly boxes: readonly string[] };

export interface TourLoad {
  /** As its own show calls it. */
  readonly load: string;
  readonly name: string;
  /** Its own show: another one where it stands ready for it. */
  readonly show: string;
  readonly hang: string;
  /** Places in the hang, from 1 at the top; one a box. */
  readonly positions: readonly number[];
  readonly cart: string;
  /** Serials, top first. */
  readonly boxes: readonly string[];
  /** Boxes set on its cart at this show. */
  readonly setOn: number;
  readonly how: HowItStands;
}

export interface TourStop {
  readonly show: string;
  readonly name: string;
  readonly weight: number;
  /** In this order; places are carts' ids or "floor". */
  readonly moves: readonly { readonly box: string; readonly from: string; readonly to: string }[];
  /** Box moves where each show knows nothing of the next. */
  readonly movesApart: number;
  /** Its own loads. */
  readonly loads: readonly TourLoad[];
  /** Loads of later shows that stand ready. */
  readonly ahead: readonly TourLoad[];
  /** Places that no box or no cart is found for. */
  readonly empty: readonly { readonly load: string; readonly name: string; readonly positions: readonly number[] }[];
}

/** Prep and all load-ins of a tour, planned together. */
export interface WholeTour {
  /** `optimal`: no tour costs less. */
  readonly status: 'optimal' | 'feasible';
  /** Box moves, each at its weight. */
  readonly cost: number;
  readonly bound: number;
  /** The same where each show knows nothing of the next. */
  readonly costApart: number;
  readonly weights: MoveWeights;
  /** Shows from the first that were taken as the plan before had them. */
  readonly fixedUntil: number;
  /** Where boxes stood before prep. */
  readonly floor: {
    readonly carts: readonly { readonly cart: string; readonly boxes: readonly string[] }[];
    readonly loose: readonly string[];
  };
  readonly stops: readonly TourStop[];
}
