import type { PlainDate } from '#kernel';
import { judge } from '#inspection-calendar';
import type { TourFile } from '#tour-file';
import type { ReasonAgainst } from '#trade';
import { placeOf } from '../inputs/index.js';

/** An item of a plan that must not fly as things stand now. */
export interface BarredItem {
  readonly item: string;
  readonly reason: ReasonAgainst;
  /** The first day on which it must not. */
  readonly barredFrom: PlainDate;
}

/**
 * What the gate says now of the items that a plan was made with, through the last day of its show. What is no longer on file is barred, and so is
 * everything where a place of the tour is not judged: no rules are no pass, whenever they or the answer for it went away.
 */
export function barredItems(
  file: Pick<TourFile, 'items' | 'examinationRules'> & { readonly tour: Pick<TourFile['tour'], 'jurisdictions' | 'placeAnswers'> },
  ids: readonly string[],
  days: { readonly from: PlainDate; readonly to: PlainDate },
): readonly BarredItem[] {
  const items = new Map(file.items.map((each) => [each.id, each]));
  const place = placeOf(file);
  return ids.flatMap((id): BarredItem[] => {
    const item = items.get(id);
    if (!item) return [{ item: id, reason: { code: 'not-on-file' }, barredFrom: days.from }];
    const { barredFrom, reason, notJudgedIn } = judge(item, days, place);
    if (barredFrom !== null && reason !== null) return [{ item: id, reason, barredFrom }];
    return notJudgedIn.length === 0 ? [] : [{ item: id, reason: { code: 'not-judged', places: notJudgedIn }, barredFrom: days.from }];
  });
}
