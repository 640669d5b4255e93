import { type Words, tell } from '#words';
import type { BarredView } from '../plan.types.js';
import type { BarredInPlan } from './barred.reader.js';

/** A barred item as it is shown. */
export const barredView = ({ item, reason, barredFrom, loads, hangs }: BarredInPlan, words: Words): BarredView => ({
  itemId: item,
  code: reason.code,
  reason,
  from: barredFrom,
  sentence: `${item} must not fly: ${tell(words.against, reason)}.`,
  loads: [...loads],
  hangs: [...hangs],
});
