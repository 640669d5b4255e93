import { findLastExamination } from './due-date.js';
import type { ExaminedItem } from './examinations-case.js';

/**
 * The item with those of its records alone that can still set a date: of each check those from the day of the last one on that passed for all intervals
 * (what is older is neither the last, nor the last that passed for some interval), and events on or after the day of the last examination.
 */
export function withDecidingRecords<T extends Pick<ExaminedItem, 'examinations' | 'events'>>(item: T): T {
  const lastOn = findLastExamination(item.examinations.filter((each) => !each.check))?.on ?? '';
  const whole = item.examinations.filter((each) => each.outcome === 'pass' && !each.satisfies);
  const wholeOn = (check: (typeof whole)[number]['check']) => findLastExamination(whole.filter((each) => each.check === check))?.on ?? '';
  return {
    ...item,
    examinations: item.examinations.filter((each) => each.on >= wholeOn(each.check)),
    events: item.events.filter((each) => each.on >= lastOn),
  };
}
