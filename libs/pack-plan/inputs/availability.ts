import type { PlainDate } from '#kernel';
import { type GateVerdict, type ItemJudgement, judge } from '#inspection-calendar';
import { type Item, type TourFile, holdsFor } from '#tour-file';
import type { ReasonAgainst } from '#trade';
import { placeOf } from './applicable-intervals.js';

/** An item that a rule, a failure, an event or a defect gives a state. */
export type DatedJudgement = ItemJudgement & { readonly state: Exclude<ItemJudgement['state'], 'no interval'> };

/** Whether an item may be planned to fly or ride in one show of its tour; the reason when it may not. */
export interface Availability {
  readonly item: Item;
  readonly reason: ReasonAgainst | null;
  /** Days of the tour on which it is promised elsewhere, not hired, or out of date. */
  readonly missingOn: readonly { readonly from: PlainDate; readonly to: PlainDate; readonly why: ReasonAgainst }[];
  /** Another tour holds it on a day of this one. */
  readonly isPromised: boolean;
  /** null: no rule asks how often it is examined, and nothing else speaks against it. */
  readonly judgement: DatedJudgement | null;
}

/** Judges every item of the file for a show that ends on `lastDay`; an item is in date through the last day it is needed or not at all. */
export function judgeAvailability(file: TourFile, lastDay: PlainDate): ReadonlyMap<string, Availability> {
  const { tour } = file;
  const promises = new Map<string, TourFile['bookings']>();
  for (const booking of file.bookings) {
    if (holdsFor(booking, tour) || booking.count !== undefined) continue;
    promises.set(booking.item, [...(promises.get(booking.item) ?? []), booking]);
  }
  return new Map(file.items.map((item) => [item.id, availabilityOf(file, item, promises.get(item.id) ?? [], lastDay)]));
}

/** Why an item may not travel with a show; null when it may. */
export function whyNotUsable(file: TourFile, showId: string, id: string): ReasonAgainst | null {
  const show = file.tour.shows.find((each) => each.id === showId);
  return (show && judgeAvailability(file, show.to).get(id)?.reason) ?? null;
}

function availabilityOf(file: TourFile, item: Item, promises: TourFile['bookings'], lastDay: PlainDate): Availability {
  const { prepFrom, returnTo } = file.tour;
  const verdict = judge(item, { from: prepFrom, to: returnTo }, placeOf(file));
  const judgement = verdict.judgement.state === 'no interval' ? null : { ...verdict.judgement, state: verdict.judgement.state };
  const held = promises.filter((each) => each.from <= returnTo && each.to >= prepFrom);
  const missingOn: { from: PlainDate; to: PlainDate; why: ReasonAgainst }[] = held.map(({ from, to, tour }) => ({
    from,
    to,
    why: { code: 'promised', to: tour, from, until: to },
  }));
  if (item.hire && (item.hire.from > prepFrom || item.hire.to < returnTo))
    missingOn.push({ from: prepFrom, to: returnTo, why: { code: 'hired', from: item.hire.from, until: item.hire.to } });
  return { item, judgement, missingOn, isPromised: held.length > 0, reason: reasonAgainst(file, item, verdict, missingOn, lastDay) };
}

/** What is so wherever it is and whoever holds it. */
const ofTheThing: readonly ReasonAgainst['code'][] = ['state', 'not-accepted', 'paper-missing', 'given-back'];

/** What the gate says through the last day of the show, after what keeps the item elsewhere. */
function reasonAgainst(
  file: TourFile,
  item: Item,
  { reason, barredFrom }: GateVerdict,
  missingOn: readonly { why: ReasonAgainst }[],
  lastDay: PlainDate,
): ReasonAgainst | null {
  if (reason !== null && ofTheThing.includes(reason.code)) return reason;
  if (item.depot !== file.tour.depot) return { code: 'other-depot', depot: item.depot, wanted: file.tour.depot };
  if (missingOn[0]) return missingOn[0].why;
  return barredFrom !== null && barredFrom <= lastDay ? reason : null;
}
