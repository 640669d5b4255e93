import { type PlainDate, addDays } from '#kernel';
import type { Item } from '#tour-file';
import type { RemedyFact } from '#trade';
import { type Words, english, tell } from '#words';
import { type FleetInput, isElsewhere, isInDate, promiseOn } from './fleet-calendar.js';

export interface Remedy {
  readonly serial: string;
  /** The quickest first: an examination, a release from quarantine, a repair, another depot, a return, a longer hire. */
  readonly kind: RemedyFact['code'];
  readonly sentence: string;
  readonly fact: RemedyFact;
}

const ranks: readonly Remedy['kind'][] = ['examination', 'release from quarantine', 'repair', 'another depot', 'return', 'longer hire'];

/** What would free a box of the model on a day, one line each box that is held back, ranked. */
export function remediesFor(input: FleetInput, model: string, day: PlainDate, words: Words = english): readonly Remedy[] {
  return input.kit.items
    .filter((item) => item.kind === 'box' && item.model === model && item.state !== 'retired')
    .flatMap((item): Remedy[] => {
      const fact = remedyOf(input, item, day);
      return fact ? [{ serial: item.id, kind: fact.code, sentence: tell(words.remedies, fact), fact }] : [];
    })
    .sort((a, b) => ranks.indexOf(a.kind) - ranks.indexOf(b.kind) || (a.serial < b.serial ? -1 : 1));
}

function remedyOf(input: FleetInput, item: Item, day: PlainDate): RemedyFact | undefined {
  const box = item.id;
  const remark = item.reason ?? null;
  if (item.state === 'quarantined') return { code: 'release from quarantine', box, remark };
  if (item.state === 'in repair') return { code: 'repair', box, remark };
  if (item.hire && (day < item.hire.from || day > item.hire.to))
    return { code: 'longer hire', box, from: item.hire.from, until: item.hire.to, day };
  const promise = promiseOn(input, item, day);
  if (promise) return { code: 'return', box, tour: promise.tour, until: promise.to, freeFrom: addDays(promise.to, 1) };
  if (isElsewhere(input, item)) return { code: 'another depot', box, depot: item.depot };
  return isInDate(input, item, day) ? undefined : { code: 'examination', box, day };
}
