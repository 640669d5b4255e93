import { barOfLent } from '#inspection-calendar';
import { type PlainDate, eachDay } from '#kernel';
import { type Item, holdsFor, wholeHangs } from '#tour-file';
import type { KeptBack } from '#trade';
import type { PlanInputs } from './plan-inputs.js';

export interface ShortDay {
  readonly model: string;
  /** The worst day, and the days on which it is short at all. */
  readonly day: PlainDate;
  readonly days: { readonly from: PlainDate; readonly to: PlainDate };
  readonly missing: number;
  readonly show: { readonly id: string; readonly name: string };
  /** What keeps boxes back on the worst day; at most three. */
  readonly keptBack: readonly { readonly box: string; readonly why: KeptBack }[];
}

/** Over all shows of the tour: the first day on which a model of box is short, by how many, and which promise or state of a box would free it. */
export function shortDays(inputs: PlanInputs): readonly ShortDay[] {
  const boxes = inputs.file.items.filter((item) => item.kind === 'box');
  return inputs.file.tour.shows.flatMap((show) => {
    const wanted = new Map<string, number>();
    for (const hang of wholeHangs(show)) for (const { model } of hang.boxes) wanted.set(model, (wanted.get(model) ?? 0) + 1);
    return [...wanted].flatMap(([model, count]): ShortDay[] => {
      const days = eachDay(show.from, show.to).map((day) => {
        const all = boxes.filter((box) => box.model === model);
        const keptBack = all.flatMap((box) => {
          const why = keptBackOn(inputs, box, day);
          return why === null ? [] : [{ box: box.id, why }];
        });
        return { day, missing: count - (all.length - keptBack.length), keptBack };
      });
      const short = days.filter((each) => each.missing > 0);
      if (short.length === 0) return [];
      const worst = short.reduce((a, b) => (b.missing > a.missing ? b : a));
      return [
        {
          model,
          day: worst.day,
          days: short.length === 1 ? { from: worst.day, to: worst.day } : { from: short[0]!.day, to: short.at(-1)!.day },
          missing: worst.missing,
          show: { id: show.id, name: show.name },
          keptBack: worst.keptBack.slice(0, 3),
        },
      ];
    });
  });
}

function keptBackOn(inputs: PlanInputs, box: Item, day: PlainDate): KeptBack | null {
  const { file } = inputs;
  const ofOthers = barOfLent(box);
  if (ofOthers) return ofOthers;
  if (box.state !== 'in service') return { code: 'state', state: box.state };
  if (box.unaccepted) return { code: 'not-accepted', of: box.unaccepted };
  if (box.depot !== file.tour.depot) return { code: 'other-depot', depot: box.depot };
  if (box.hire && (day < box.hire.from || day > box.hire.to)) return { code: 'hired', from: box.hire.from, until: box.hire.to };
  const promise = file.bookings.find((each) => each.item === box.id && !holdsFor(each, file.tour) && each.from <= day && each.to >= day);
  if (promise) return { code: 'promised', to: promise.tour };
  const judgement = inputs.availability.get(box.id)!.judgement;
  if (judgement && (judgement.dueOn === null || judgement.dueOn < day)) return { code: 'examination', state: judgement.state };
  return null;
}
