import type { PlainDate } from '#kernel';
import type { ExaminedItem, JudgedWindow } from '../dates/index.js';

/** Where shows of a tour are, and from where the tour leaves. */
export interface SeasonTour {
  readonly id: string;
  readonly depot: string;
  readonly shows: readonly { readonly id: string; readonly from: PlainDate; readonly to: PlainDate }[];
}

/** An item is promised on these days, both included. `tour`: the id of the tour that it goes with; null: held, or promised to somebody known by name alone. */
export interface SeasonStay {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly tour: string | null;
  /** A hold keeps the item at its depot; who is known by name alone has it away. */
  readonly isHold: boolean;
}

export interface SeasonItem extends Omit<ExaminedItem, 'seenOn'> {
  readonly depot: string;
  /** In any order; those of a batch may overlap. */
  readonly stays: readonly SeasonStay[];
}

/** A place where an examiner may come. */
export type VisitPlace =
  | { readonly kind: 'depot'; readonly depot: string }
  | { readonly kind: 'show'; readonly tour: string; readonly show: string };

/** A day on which an examiner may come to one place; several on one day are several visits. */
export interface PossibleVisit {
  readonly id: string;
  readonly on: PlainDate;
  readonly at: VisitPlace;
}

export interface SeasonCase {
  readonly window: JudgedWindow;
  readonly tours: readonly SeasonTour[];
  readonly items: readonly SeasonItem[];
  readonly visits: readonly PossibleVisit[];
}
