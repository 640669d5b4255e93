import type { Item, TourFile } from '#tour-file';

/** The intervals that an item is examined at on this tour: its own, or those of every rule of the countries visited. Empty: not a lifting item. */
export function applicableIntervals(file: Pick<TourFile, 'examinationRules' | 'tour'>, item: Item): readonly string[] {
  if (item.intervals) return item.intervals;
  const rules = file.examinationRules.filter(
    (rule) => file.tour.jurisdictions.includes(rule.jurisdiction) && rule.kinds.includes(item.kind),
  );
  return [...new Set(rules.flatMap((rule) => rule.intervals))].sort();
}
