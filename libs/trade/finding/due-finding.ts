import type { PlainDate } from '#kernel';
import type { DaySubject, ItemSubject, PlaceSubject, QuoteSubject, TourSubject } from '../subject/index.js';
import type { JudgedFact } from '../reason/index.js';
import type { Of } from './shape.js';

/** Where an item of a plan hangs or rides. */
export type Whereabouts =
  | { readonly code: 'box'; readonly hang: string; readonly name: string; readonly position: number }
  | { readonly code: 'grid'; readonly hang: string; readonly name: string }
  | { readonly code: 'hoist'; readonly hang: string; readonly name: string; readonly hole: string }
  | { readonly code: 'spare' }
  | { readonly code: 'case'; readonly case: string }
  | { readonly code: 'fitted-to-boxes' }
  | { readonly code: 'loose' }
  | { readonly code: 'not-in-plan' };

type Dated = {
  readonly itemKind: string;
  /** Pieces of a batch; null for a serial. */
  readonly count: number | null;
  readonly where: Whereabouts;
  readonly cannotBeSaved: boolean;
};

type NotInDate<Code extends string> = Of<Code, { readonly item: ItemSubject; readonly visit: DaySubject | null }> &
  Dated & { readonly judged: JudgedFact };

export type DueFinding =
  /** No examination rule of a visited place is on file: nothing is judged there. `ruled`: places that have rules. */
  | (Of<'not-judged', { readonly place: PlaceSubject; readonly tour: TourSubject }> & { readonly ruled: readonly string[] })
  /** A place without rules on file is judged by those of another: the safety officer's answer for this tour. `date`: the first prep day. */
  | (Of<'judged-elsewhere', { readonly place: PlaceSubject; readonly rulesOf: PlaceSubject; readonly tour: TourSubject }> & {
      readonly because: string;
      readonly decidedBy: string;
      readonly decidedOn: PlainDate;
    })
  | (Of<'falls-due', { readonly item: ItemSubject; readonly visit: DaySubject | null }, { readonly showsAfter: number }> & Dated)
  | NotInDate<'overdue'>
  | NotInDate<'no-record'>
  | NotInDate<'blocked'>
  | NotInDate<'failed'>;

/** `about`: a hang, a cart load, an item or a line, as the check calls it; `check` and `found` as the check says it. */
export type InputFinding =
  | Of<'long-tour', { readonly tour: TourSubject }, { readonly days: number }>
  | Of<'checker-disagrees', { readonly about: QuoteSubject; readonly check: QuoteSubject; readonly found: QuoteSubject }>;
