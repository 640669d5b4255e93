import { type Period, type PlainDate, addPeriod, invariant, readPeriod } from '#kernel';
import { type CheckKind, type DueCause, splitInterval } from '#trade';
import type { CaseExamination, ExaminedItem } from './examinations-case.js';

/** Why an item has no due date. */
export type NoDueDate = 'failed' | 'blocked' | 'no record' | 'no interval';

/** The last day on which an item may be used, and what set it. */
export type DueDate =
  | { readonly dueOn: PlainDate; readonly because: DueCause }
  | { readonly dueOn: null; readonly because: DueCause; readonly state: NoDueDate };

/** A new item's declaration of conformity stands in for a first examination for this long (LOLER 1998 reg. 9(1)(a)). */
const declarationStandsFor: Period = { months: 12, days: 0 };

/** The period of an interval, of whichever check. */
export function getPeriod(interval: string): Period {
  const text = splitInterval(interval).period;
  const period = readPeriod(text);
  invariant(period, `${text} is a period of ISO 8601`);
  return period;
}

const samePeriod = (a: Period, b: Period): boolean => a.months === b.months && a.days === b.days;

/** The last examination of any outcome; of two on one day the later in the list. */
export function findLastExamination(examinations: readonly CaseExamination[]): CaseExamination | undefined {
  return examinations.reduce<CaseExamination | undefined>(
    (last, each) => (last === undefined || each.on >= last.on ? each : last),
    undefined,
  );
}

const ofCheck = (item: Pick<ExaminedItem, 'examinations'>, check: CheckKind): readonly CaseExamination[] =>
  item.examinations.filter((each) => (each.check ?? 'examination') === check);

/** The checks that are on file of an item, and those whose intervals it has; the examination first. */
const checksOf = ({ intervals, examinations }: Pick<ExaminedItem, 'intervals' | 'examinations'>): readonly CheckKind[] => [
  ...new Set<CheckKind>([
    'examination',
    ...intervals.map((each) => splitInterval(each).check),
    ...examinations.flatMap((each) => each.check ?? []),
  ]),
];

/** The last day on which something happened that a visit must be later than; undefined when nothing has. */
export function findLastRecordOn(item: ExaminedItem): PlainDate | undefined {
  return [...item.examinations, ...item.events].reduce<PlainDate | undefined>(
    (last, { on }) => (last === undefined || on > last ? on : last),
    undefined,
  );
}

/** Due date of an examination made on a day that renews all intervals: always from the real day, the earliest counts. undefined: no interval, no date. */
export function dueAfterExamination(on: PlainDate, intervals: readonly Period[]): PlainDate | undefined {
  return intervals.map((each) => addPeriod(on, each)).sort()[0];
}

/**
 * The latest event that still blocks: on or after the day of the last examination (which came first that day is not known), unless that examination
 * names it as what it answers.
 */
function blockingEvent(item: ExaminedItem, last: CaseExamination | undefined): ExaminedItem['events'][number] | undefined {
  return item.events
    .filter((each) => last === undefined || (each.on >= last.on && !last.answers?.includes(each.on)))
    .sort((a, b) => (a.on < b.on ? -1 : 1))
    .at(-1);
}

/**
 * When the item may last be used, for a window that begins on `from`. Each check is judged by its own records: a failed one of any kind keeps it from
 * use until that kind is passed, and only the examination answers an event.
 */
export function findDueDate(item: ExaminedItem, from: PlainDate): DueDate {
  const lasts = checksOf(item).flatMap((check) => findLastExamination(ofCheck(item, check)) ?? []);
  const failed = lasts.find((each) => each.outcome === 'fail');
  if (failed) return { dueOn: null, state: 'failed', because: { code: 'failed', on: failed.on, ...named(failed) } };
  const last = lasts.find((each) => each.check === undefined);
  const event = blockingEvent(item, last);
  if (event) return { dueOn: null, state: 'blocked', because: becauseOf(event, last) };
  let earliest: { dueOn: PlainDate; because: DueCause } | undefined;
  for (const interval of item.intervals) {
    const due = dueOfInterval(item, interval, from);
    if (!due) return { dueOn: null, state: 'no record', because: { code: 'not-examined', interval } };
    if (!earliest || due.dueOn < earliest.dueOn) earliest = due;
  }
  for (const { on, defectBy, check } of lasts)
    if (defectBy !== undefined && (!earliest || defectBy < earliest.dueOn))
      earliest = { dueOn: defectBy, because: { code: 'defect', reportOn: on, by: defectBy, ...named({ check }) } };
  return earliest ?? { dueOn: null, state: 'no interval', because: { code: 'no-interval' } };
}

const named = ({ check }: Pick<CaseExamination, 'check'>): { check?: NonNullable<typeof check> } => (check ? { check } : {});

const becauseOf = (event: { readonly on: PlainDate; readonly what: string }, last: CaseExamination | undefined): DueCause => ({
  code: event.on === last?.on ? 'event-unanswered' : 'event-since',
  what: event.what,
  on: event.on,
});

/**
 * The last day on which `findDueDate` gives the same answer as on `from`, where a declaration stands in for an examination; null where it gives the
 * same on every later day.
 */
export function lastDayOfDeclaration(item: ExaminedItem, from: PlainDate): PlainDate | null {
  const examined = item.intervals.filter((each) => splitInterval(each).check === 'examination');
  if (item.declaredOn === undefined || examined.every((each) => lastPassed(item, each))) return null;
  const through = addPeriod(item.declaredOn, declarationStandsFor);
  return from <= through ? through : null;
}

function lastPassed(item: ExaminedItem, interval: string): CaseExamination | undefined {
  const period = getPeriod(interval);
  return findLastExamination(
    ofCheck(item, splitInterval(interval).check).filter(
      (each) => each.outcome === 'pass' && (each.satisfies?.some((text) => samePeriod(getPeriod(text), period)) ?? true),
    ),
  );
}

function dueOfInterval(item: ExaminedItem, interval: string, from: PlainDate): { dueOn: PlainDate; because: DueCause } | undefined {
  const period = getPeriod(interval);
  const passed = lastPassed(item, interval);
  if (passed) return dueOfReport(passed, interval, period);
  // A declaration of conformity stands in for the examination alone.
  if (
    splitInterval(interval).check !== 'examination' ||
    item.declaredOn === undefined ||
    from > addPeriod(item.declaredOn, declarationStandsFor)
  )
    return undefined;
  return { dueOn: addPeriod(item.declaredOn, period), because: { code: 'declared', on: item.declaredOn, interval } };
}

/** A report's own date shortens the interval, and replaces it only under an examination scheme (LOLER 1998 reg. 9(3)(a)(iii)). */
function dueOfReport(report: CaseExamination, interval: string, period: Period): { dueOn: PlainDate; because: DueCause } {
  const dueOn = addPeriod(report.on, period);
  const { nextLatestOn } = report;
  if (nextLatestOn !== undefined && (report.underScheme === true || nextLatestOn < dueOn))
    return {
      dueOn: nextLatestOn,
      because: { code: 'report', reportOn: report.on, by: nextLatestOn, underScheme: report.underScheme === true, ...named(report) },
    };
  return { dueOn, because: { code: 'examined', on: report.on, interval } };
}
