import { type Words, tell } from '#words';
import type { BarredView } from '../plan.types.js';
import type { BarredInPlan } from './barred.reader.js';

/** A barred item as it is shown; where a place is not judged, all items say one sentence. */
export const barredView = ({ item, reason, barredFrom, loads, hangs }: BarredInPlan, words: Words): BarredView => ({
  itemId: item,
  code: reason.code,
  reason,
  from: barredFrom,
  sentence: `${reason.code === 'not-judged' ? 'Nothing may fly' : `${item} must not fly`}: ${tell(words.against, reason)}.`,
  loads: [...loads],
  hangs: [...hangs],
});
