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

/** What the gate says now of the items that a plan was made with, through the last day of its show. What is no longer on file is barred. */
export function barredItems(
  file: Pick<TourFile, 'items' | 'examinationRules'> & { readonly tour: Pick<TourFile['tour'], 'jurisdictions' | 'placeAnswers'> },
  ids: readonly string[],
  days: { readonly from: PlainDate; readonly to: PlainDate },
): readonly BarredItem[] {
  const items = new Map(file.items.map((each) => [each.id, each]));
  return ids.flatMap((id): BarredItem[] => {
    const item = items.get(id);
    if (!item) return [{ item: id, reason: { code: 'not-on-file' }, barredFrom: days.from }];
    const { barredFrom, reason } = judge(item, days, placeOf(file));
    return barredFrom === null || reason === null ? [] : [{ item: id, reason, barredFrom }];
  });
}
