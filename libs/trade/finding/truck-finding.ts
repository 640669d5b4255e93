import type { LeftOverReason, LoadBreach, LoadingWish, ReasonAgainst } from '../reason/index.js';
import type { AxleSubject, GroupSubject, ItemSubject, PieceSubject, RuleSubject, TruckSubject } from '../subject/index.js';
import type { Of } from './shape.js';

/** A run of axles of the bridge formula, counted from the front. */
export interface BridgeRun {
  readonly first: number;
  readonly last: number;
  readonly spanFt: number;
  readonly loadLb: number;
  readonly limitLb: number;
}

/** What the bridge formula says of a whole load. */
export type BridgeFact =
  | { readonly code: 'axle-places-not-on-file' }
  | { readonly code: 'axle-load-not-known' }
  | { readonly code: 'over'; readonly runs: readonly BridgeRun[] }
  | { readonly code: 'within'; readonly count: number; readonly nearest: BridgeRun };

type Wish = { readonly wish: LoadingWish };

export type TruckFinding =
  | (Of<'kept-breaks-rule', { readonly piece: PieceSubject }> & { readonly breach: LoadBreach })
  | (Of<'left-over', { readonly piece: PieceSubject }> & { readonly why: LeftOverReason })
  | (Of<'order-waived', { readonly piece: ItemSubject | GroupSubject }> & Wish)
  | (Of<'wish-without-effect', { readonly piece: ItemSubject | GroupSubject }> & Wish)
  | Of<'axle-over', { readonly axle: AxleSubject }, { readonly loadKg: number; readonly limitKg: number }>
  | Of<'axle-nearly-over', { readonly axle: AxleSubject }, { readonly loadKg: number; readonly limitKg: number }>
  | Of<'no-axle-figures', { readonly truck: TruckSubject }>
  | (Of<'bridge-formula', { readonly truck: TruckSubject; readonly rule: RuleSubject }> & { readonly bridge: BridgeFact })
  | (Of<'bridge-formula-over', { readonly truck: TruckSubject; readonly rule: RuleSubject }> & { readonly bridge: BridgeFact })
  | (Of<'freight-barred', { readonly piece: ItemSubject; readonly truck: TruckSubject }> & { readonly why: ReasonAgainst })
  | Of<'tagged-freight', { readonly piece: PieceSubject; readonly inside: readonly ItemSubject[] }>
  | Of<
      'over-when-empty',
      { readonly truck: TruckSubject; readonly axle: AxleSubject },
      { readonly loadKg: number; readonly limitKg: number }
    >;
