import { type ExaminationsCase, makeExaminationsCase } from '#inspection-calendar';
import { addDays, daysBetween, invariant, seededRandom } from '#kernel';

interface CaseSize {
  readonly items: number;
  readonly visits: number;
  readonly from: string;
  readonly to: string;
}

const intervals = [['P6M'], ['P6M'], ['P1Y'], ['P3M'], ['P1Y', 'P6M']];

/** A case by a seed: items that are where the examiner is on random days of visits, on three to eight in ten of them. */
export function madeCase(seed: number, { items, visits, from, to }: CaseSize): ExaminationsCase {
  const random = seededRandom(seed);
  const upTo = (most: number): number => Math.floor(random() * most);
  const visitDays = [...new Set(Array.from({ length: visits }, () => addDays(from, upTo(daysBetween(from, to)))))].sort();
  const made = makeExaminationsCase({
    window: { from, to },
    visitDays,
    items: Array.from({ length: items }, (_, number) => {
      const share = 0.3 + upTo(6) / 10;
      const last = addDays(from, -1 - upTo(170));
      return {
        ...{ id: `I-${number + 1}`, intervals: intervals[upTo(intervals.length)]! },
        examinations: random() < 0.05 ? [] : [{ on: last, outcome: random() < 0.02 ? ('fail' as const) : ('pass' as const) }],
        events: random() < 0.03 ? [{ on: addDays(last, 1 + upTo(20)), what: 'shock load' }] : [],
        seenOn: visitDays.filter(() => random() < share),
      };
    }),
  });
  invariant(made.ok, 'a made case agrees with itself');
  return made.value;
}
