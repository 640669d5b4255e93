import type { PlainDate } from '#kernel';
import type { OtherCheck } from '../record/index.js';

/** What set the last day of use of an item, or why it has none. Intervals are periods of ISO 8601, of another check than the examination with its name before. */
export type DueCause =
  | { readonly code: 'failed'; readonly on: PlainDate; readonly check?: OtherCheck }
  /** On the day of the last examination, which does not name it as answered. */
  | { readonly code: 'event-unanswered'; readonly what: string; readonly on: PlainDate }
  | { readonly code: 'event-since'; readonly what: string; readonly on: PlainDate }
  | { readonly code: 'not-examined'; readonly interval: string }
  | { readonly code: 'no-interval' }
  | { readonly code: 'defect'; readonly reportOn: PlainDate; readonly by: PlainDate; readonly check?: OtherCheck }
  | {
      readonly code: 'report';
      readonly reportOn: PlainDate;
      readonly by: PlainDate;
      readonly underScheme: boolean;
      readonly check?: OtherCheck;
    }
  | { readonly code: 'declared'; readonly on: PlainDate; readonly interval: string }
  | { readonly code: 'examined'; readonly on: PlainDate; readonly interval: string };

interface Judged<Code extends string> {
  readonly code: Code;
  readonly id: string;
  readonly dueOn: PlainDate | null;
  readonly because: DueCause;
  readonly from: PlainDate;
  readonly to: PlainDate;
}

/** An item judged by its dates for the days of a window; its state is the code. */
export type JudgedFact =
  | Judged<'in date throughout'>
  | Judged<'falls due'>
  | Judged<'overdue'>
  | Judged<'no record'>
  | Judged<'blocked'>
  | Judged<'failed'>
  | Judged<'no interval'>;
