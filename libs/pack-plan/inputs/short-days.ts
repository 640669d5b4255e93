import { type PlainDate, eachDay } from '#kernel';
import { type Item, holdsFor, wholeHangs } from '#tour-file';
import type { PlanInputs } from './plan-inputs.js';

export interface ShortDay {
  readonly model: string;
  readonly day: PlainDate;
  readonly missing: number;
  readonly show: string;
  readonly sentence: string;
}

/** Over all shows of the tour: the first day on which a model of box is short, by how many, and which promise or state of a box would free it. */
export function shortDays(inputs: PlanInputs): readonly ShortDay[] {
  const { file } = inputs;
  const boxes = file.items.filter((item) => item.kind === 'box');
  return file.tour.shows.flatMap((show) => {
    const wanted = new Map<string, number>();
    for (const hang of wholeHangs(show)) for (const { model } of hang.boxes) wanted.set(model, (wanted.get(model) ?? 0) + 1);
    return [...wanted].flatMap(([model, count]): ShortDay[] => {
      const days = eachDay(show.from, show.to).map((day) => {
        const kept = boxes.filter((box) => box.model === model).map((box) => ({ box, why: keptBackOn(inputs, box, day) }));
        return { day, missing: count - kept.filter((each) => each.why === null).length, kept: kept.filter((each) => each.why !== null) };
      });
      const short = days.filter((each) => each.missing > 0);
      if (short.length === 0) return [];
      const worst = short.reduce((a, b) => (b.missing > a.missing ? b : a));
      const on = short.length === 1 ? `on ${worst.day}` : `from ${short[0]!.day} to ${short.at(-1)!.day}`;
      const why = worst.kept
        .slice(0, 3)
        .map((each) => `${each.box.id} is ${each.why}`)
        .join('; ');
      return [
        {
          model,
          day: worst.day,
          missing: worst.missing,
          show: show.name,
          sentence: `${model} is ${worst.missing} ${worst.missing === 1 ? 'box' : 'boxes'} short ${on} (${show.name}). ${why ? `${why}. ` : ''}Free one of these or hire in.`,
        },
      ];
    });
  });
}

function keptBackOn(inputs: PlanInputs, box: Item, day: PlainDate): string | null {
  const { file } = inputs;
  if (box.state !== 'in service') return box.state;
  if (box.depot !== file.tour.depot) return `at ${box.depot}`;
  if (box.hire && (day < box.hire.from || day > box.hire.to)) return `hired in from ${box.hire.from} to ${box.hire.to} only`;
  const promise = file.bookings.find((each) => each.item === box.id && !holdsFor(each, file.tour) && each.from <= day && each.to >= day);
  if (promise) return `promised to ${promise.tour}`;
  const judgement = inputs.availability.get(box.id)!.judgement;
  if (judgement && (judgement.dueOn === null || judgement.dueOn < day)) return judgement.state;
  return null;
}
