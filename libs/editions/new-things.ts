import type { Examination, ExaminationRule, Item } from '#tour-file';
import { directionOfIntervals } from './direction.js';

/** What of the register has a say in a new item. */
export interface ItemsOnFile {
  /** The intervals of every rule in force for its kind. */
  readonly intervals: readonly string[];
  /** A model of which something is out of use: a new serial of it may be an old one in new paint. */
  readonly isModelOutOfUse: boolean;
}

export interface NewItem {
  /** As it comes on file. */
  readonly inForce: Item;
  /** Nothing of it is used until the safety officer accepts it. */
  readonly waitsWhole: boolean;
  readonly declaredOn: string | null;
  /** Passed examinations; failed ones count at once. */
  readonly examinations: readonly Examination[];
}

/** An item that somebody other than the safety officer puts on file: what speaks against it holds at once, what speaks for it waits. */
export function decideNewItem(item: Item, { intervals, isModelOutOfUse }: ItemsOnFile): NewItem {
  const hasLaxerIntervals = item.intervals !== undefined && directionOfIntervals(intervals, item.intervals) === 'permissive';
  const waitsWhole = hasLaxerIntervals || isModelOutOfUse;
  const { declaredOn, unaccepted: _unaccepted, lent, ...rest } = item;
  return {
    inForce: {
      ...rest,
      ...(lent ? { lent: withoutPaper(lent) } : {}),
      ...(waitsWhole ? { unaccepted: 'item' as const } : {}),
      examinations: item.examinations.filter((each) => each.outcome === 'fail'),
    },
    waitsWhole,
    declaredOn: declaredOn ?? null,
    examinations: item.examinations.filter((each) => each.outcome === 'pass'),
  };
}

/** Kit of others as a file brings it: whoever saw its paper, saw it elsewhere. */
function withoutPaper({ paper: _paper, cleared: _cleared, ...lent }: NonNullable<Item['lent']>): Item['lent'] {
  return lent;
}

/** A rule more in a place that is judged already, or of another check, only adds to what is asked; the first of a place is what it is judged by. */
export const isNewRuleCautious = (rule: ExaminationRule, inForce: readonly ExaminationRule[]): boolean =>
  rule.check !== undefined || inForce.some((each) => each.jurisdiction === rule.jurisdiction && each.check === undefined);
