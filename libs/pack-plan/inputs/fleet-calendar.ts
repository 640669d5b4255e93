import { type PlainDate, eachDay } from '#kernel';
import { barOfLent, judgeItem } from '#inspection-calendar';
import { type Booking, type Item, type Kit, type Tour, holdsFor, wholeHangs } from '#tour-file';
import { intervalsOfItem, intervalsOfRules } from '#trade';

export interface FleetInput {
  readonly kit: Pick<Kit, 'items' | 'examinationRules'>;
  /** Promises of every tour and hold. */
  readonly bookings: readonly Booking[];
  /** Where the boxes are wanted; any depot where nothing is said. */
  readonly depot?: string;
  /** Tours on file: what they want and do not hold yet comes on top. */
  readonly tours: readonly Tour[];
}

export interface FleetDay {
  readonly day: PlainDate;
  /** Boxes that may be used on that day and nobody holds. */
  readonly free: number;
  readonly promised: number;
  /** Quarantined, in repair, not hired in, out of date. */
  readonly out: number;
  /** What tours want beyond what they hold and what is free; 0 where all is served. */
  readonly short: number;
}

export interface FleetModel {
  readonly model: string;
  readonly count: number;
  readonly days: readonly FleetDay[];
}

/** Every model of box on every day from the first to the last: what is free, promised, out, and where it runs short. */
export function fleetCalendar(input: FleetInput, from: PlainDate, to: PlainDate): readonly FleetModel[] {
  const boxes = input.kit.items.filter((item) => item.kind === 'box' && item.state !== 'retired');
  const models = [...new Set(boxes.map((box) => box.model))].sort();
  const wants = wantsOf(input);
  return models.map((model) => {
    const own = boxes.filter((box) => box.model === model);
    return {
      model,
      count: own.length,
      days: eachDay(from, to).map((day) => {
        const states = own.map((box) => stateOn(input, box, day));
        const free = states.filter((each) => each === 'free').length;
        const wanted = wants
          .filter((each) => each.from <= day && day <= each.to)
          .reduce((sum, each) => sum + (each.boxes.get(model) ?? 0), 0);
        return {
          day,
          free,
          promised: states.filter((each) => each === 'promised').length,
          out: states.filter((each) => each === 'out').length,
          short: Math.max(0, wanted - free),
        };
      }),
    };
  });
}

/** Boxes by model that tours want beyond what they hold, first prep day to last return day: the most of any of their shows. */
function wantsOf({ kit, tours, bookings, depot }: FleetInput): { from: PlainDate; to: PlainDate; boxes: ReadonlyMap<string, number> }[] {
  const modelOf = new Map(kit.items.filter((item) => item.kind === 'box').map((item) => [item.id, item.model]));
  return tours
    .filter((tour) => depot === undefined || tour.depot === depot)
    .map((tour) => {
      const boxes = new Map<string, number>();
      for (const show of tour.shows) for (const [model, count] of designOf(show)) boxes.set(model, Math.max(count, boxes.get(model) ?? 0));
      // What the tour holds already it does not want again.
      for (const booking of bookings) {
        const model = holdsFor(booking, tour) ? modelOf.get(booking.item) : undefined;
        if (model !== undefined) boxes.set(model, Math.max(0, (boxes.get(model) ?? 0) - 1));
      }
      return { from: tour.prepFrom, to: tour.returnTo, boxes };
    });
}

/** Boxes by model of a show's hangs. */
export function designOf(show: Tour['shows'][number]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const hang of wholeHangs(show)) for (const { model } of hang.boxes) counts.set(model, (counts.get(model) ?? 0) + 1);
  return counts;
}

/** The first day on which a design can be served for `days` days on end; undefined where the calendar ends before. */
export function firstDayFor(calendar: readonly FleetModel[], design: ReadonlyMap<string, number>, days: number): PlainDate | undefined {
  const all = calendar[0]?.days ?? [];
  const serves = (index: number) =>
    [...design].every(([model, count]) => (calendar.find((each) => each.model === model)?.days[index]?.free ?? 0) >= count);
  let run = 0;
  for (let index = 0; index < all.length; index++) {
    run = serves(index) ? run + 1 : 0;
    if (run >= days) return all[index - days + 1]!.day;
  }
  return undefined;
}

function stateOn(input: FleetInput, item: Item, day: PlainDate): 'free' | 'promised' | 'out' {
  if (promiseOn(input, item, day)) return 'promised';
  if (item.state !== 'in service' || isElsewhere(input, item)) return 'out';
  if (barOfLent(item)) return 'out';
  if (item.hire && (day < item.hire.from || day > item.hire.to)) return 'out';
  return isInDate(input, item, day) ? 'free' : 'out';
}

export const isElsewhere = ({ depot }: FleetInput, item: Item): boolean => depot !== undefined && item.depot !== depot;

export const promiseOn = ({ bookings }: FleetInput, item: Item, day: PlainDate): Booking | undefined =>
  bookings.find((each) => each.item === item.id && each.count === undefined && each.from <= day && day <= each.to);

export function isInDate({ kit }: FleetInput, item: Item, day: PlainDate): boolean {
  const intervals = [
    ...intervalsOfItem(item.intervals, intervalsOfRules(kit.examinationRules.filter((rule) => rule.kinds.includes(item.kind)))),
  ];
  if (intervals.length === 0) return true;
  const { dueOn } = judgeItem(
    { id: item.id, intervals: [...intervals], examinations: item.examinations, events: item.events, declaredOn: item.declaredOn },
    { from: day, to: day },
  );
  return dueOn !== null && dueOn >= day;
}
