/** Ways in which a load breaks a rule, or claims what is not so, by the rule. */
export interface BreachKinds {
  readonly 'unknown-piece': 'kept' | 'waived' | 'placed';
  readonly 'unknown-truck': 'kept' | 'answered';
  readonly count: 'kept-twice' | 'not-once';
  readonly waived: 'unnamed';
  readonly 'left-over': 'too-high' | 'too-large';
  readonly turned: 'turned';
  readonly 'not-whole': 'place';
  readonly outside: 'truck';
  readonly door: 'high';
  readonly blocked: 'place';
  readonly overlap: 'piece';
  readonly bears: 'too-much';
  readonly 'floor-only': 'stacked';
  readonly support: 'base';
  readonly order: 'rests-on' | 'in-the-way';
  readonly 'loading-order': 'incomplete' | 'before-support' | 'after-loaded' | 'lane-taken';
  readonly limit: 'above' | 'below' | 'kept-mass' | 'kept-outside';
  readonly claim: 'mass' | 'length' | 'side' | 'axle' | 'no-such-axle';
  readonly bound: 'trucks' | 'length';
  readonly status: 'not-optimal';
  readonly kept: 'elsewhere';
}

type BreachOf<C extends keyof BreachKinds> = {
  readonly code: C;
  readonly kind: BreachKinds[C];
  /** The piece or truck. */
  readonly subject: string;
  /** Other pieces or trucks, or the limit, that it is about. */
  readonly names: readonly string[];
  readonly numbers: Readonly<Record<string, number>>;
};

/** A rule of loading that a load breaks, or a claim of it that is not so. */
export type LoadBreach = { [C in keyof BreachKinds]: BreachOf<C> }[keyof BreachKinds];
