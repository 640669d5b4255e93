import type { Code, Finding, FindingOf } from './finding.js';

/** How much a finding weighs: nothing to do, check, stop. Shown as ring, half ring, filled square, with the word. */
export type Weight = 'agrees' | 'look' | 'stop';

/** Which of the five results (or the inputs) a finding stands beside. */
export type Section = 'picks' | 'carts' | 'hardware' | 'truck' | 'due' | 'inputs';

interface Standing<C extends Code> {
  readonly section: Section;
  readonly weight: Weight | ((finding: FindingOf<C>) => Weight);
  /** No reason given releases a plan that says this. */
  readonly barsRelease?: true;
  /** Only the safety officer's own reason releases a plan that says stop with this. */
  readonly needsOfficer?: true;
}

const notInDate = {
  section: 'due',
  // What hangs in no plan stops nothing.
  weight: ({ where }: FindingOf<'overdue' | 'no-record' | 'blocked' | 'failed'>): Weight =>
    where.code === 'not-in-plan' ? 'look' : 'stop',
  needsOfficer: true,
} as const;

/** Every code with the result that it stands beside and its weight: the one place that decides what stops a release. */
export const standingOf: { readonly [C in Code]: Standing<C> } = {
  'long-tour': { section: 'inputs', weight: 'look' },
  'checker-disagrees': { section: 'inputs', weight: 'stop', barsRelease: true },

  'rule-from-memory': { section: 'picks', weight: 'look' },
  'model-not-accepted': { section: 'picks', weight: 'stop', needsOfficer: true },
  'rule-below-published': { section: 'picks', weight: 'look' },
  'rule-not-accepted': { section: 'picks', weight: 'stop', needsOfficer: true },
  'over-rated-load': { section: 'picks', weight: 'stop', needsOfficer: true },
  'no-rated-value': { section: 'picks', weight: 'look' },
  'no-rule': { section: 'picks', weight: 'look' },
  'cannot-hang-like-this': { section: 'picks', weight: 'stop', needsOfficer: true },
  'cannot-lift-like-this': { section: 'picks', weight: 'stop', needsOfficer: true },
  'reversed-link': { section: 'picks', weight: 'look' },
  'beyond-working-tilt': { section: 'picks', weight: 'stop', needsOfficer: true },
  'no-working-tilt': { section: 'picks', weight: 'look' },
  'front-pins-pushed': { section: 'picks', weight: 'look' },
  'lock-pin-under-load': { section: 'picks', weight: 'stop', needsOfficer: true },
  'point-at-two-places': { section: 'picks', weight: 'stop', needsOfficer: true },
  'pull-back-reverses': { section: 'picks', weight: 'look' },
  'outside-tilt-range': { section: 'picks', weight: 'stop', needsOfficer: true },
  'no-headroom': { section: 'picks', weight: 'stop', needsOfficer: true },
  'headroom-not-known': { section: 'picks', weight: 'look' },
  'below-floor': { section: 'picks', weight: 'stop', needsOfficer: true },
  'leg-does-not-fit': { section: 'picks', weight: 'stop', needsOfficer: true },
  'hangs-touch': { section: 'picks', weight: 'stop', needsOfficer: true },
  'hangs-too-close': { section: 'picks', weight: 'look' },
  'no-room-for-cart': { section: 'picks', weight: 'stop', needsOfficer: true },
  'no-steel': { section: 'picks', weight: 'look' },
  'no-secondary': { section: 'picks', weight: 'stop', needsOfficer: true },
  measure: { section: 'picks', weight: 'look' },
  'system-limit': { section: 'picks', weight: 'stop', needsOfficer: true },
  'system-not-approved': { section: 'picks', weight: 'stop', needsOfficer: true },
  'no-wind-limit': { section: 'picks', weight: 'look' },
  'item-missing': { section: 'picks', weight: 'stop', needsOfficer: true },

  'box-moves-mismatch': { section: 'carts', weight: 'stop', barsRelease: true },
  'design-not-served': { section: 'carts', weight: 'stop' },
  'box-moves': { section: 'carts', weight: ({ isProved }) => (isProved ? 'agrees' : 'look') },
  // Another show of the tour is planned on its own page.
  'model-short': { section: 'carts', weight: ({ isOwnShow }) => (isOwnShow ? 'stop' : 'look') },
  'out-of-service-in-cart': { section: 'carts', weight: 'look' },
  'cart-exception': {
    section: 'carts',
    weight: ({ exception }) => (exception.code === 'no-box' || exception.code === 'no-cart' ? 'stop' : 'look'),
  },

  'hardware-missing': { section: 'hardware', weight: 'stop', needsOfficer: true },
  'travelling-and-fitted-differ': { section: 'hardware', weight: 'stop' },
  'kept-with-boxes-differs': { section: 'hardware', weight: 'look' },
  'frame-not-counted': { section: 'hardware', weight: 'look' },
  'control-not-counted': { section: 'hardware', weight: 'look' },
  'frame-without-rated-value': { section: 'hardware', weight: 'look' },
  'frame-over-rated': { section: 'hardware', weight: 'stop', needsOfficer: true },
  'control-not-in-loads': { section: 'hardware', weight: 'look' },
  'chain-too-short': { section: 'hardware', weight: 'stop' },
  'no-point-height': { section: 'hardware', weight: 'look' },

  'kept-breaks-rule': { section: 'truck', weight: 'stop' },
  'left-over': { section: 'truck', weight: 'stop' },
  'order-waived': { section: 'truck', weight: 'look' },
  'wish-without-effect': { section: 'truck', weight: 'look' },
  'axle-over': { section: 'truck', weight: 'stop' },
  'axle-nearly-over': { section: 'truck', weight: 'look' },
  'no-axle-figures': { section: 'truck', weight: 'look' },
  'bridge-formula': { section: 'truck', weight: ({ bridge }) => (bridge.code === 'within' ? 'agrees' : 'look') },
  'bridge-formula-over': { section: 'truck', weight: 'stop' },
  'freight-barred': { section: 'truck', weight: 'stop', needsOfficer: true },
  'tagged-freight': { section: 'truck', weight: 'look' },
  'over-when-empty': { section: 'truck', weight: 'stop' },

  'falls-due': { section: 'due', weight: 'look' },
  'judged-elsewhere': { section: 'due', weight: 'look' },
  'not-judged': { section: 'due', weight: 'stop', needsOfficer: true },
  overdue: notInDate,
  'no-record': notInDate,
  blocked: notInDate,
  failed: notInDate,
};

export function weightOf(finding: Finding): Weight {
  const { weight } = standingOf[finding.code];
  return typeof weight === 'string' ? weight : (weight as (one: Finding) => Weight)(finding);
}

export const barsRelease = (code: Code): boolean => standingOf[code].barsRelease === true;

export const needsOfficer = (code: Code): boolean => standingOf[code].needsOfficer === true;

export const sectionOf = (finding: Finding): Section => standingOf[finding.code].section;
