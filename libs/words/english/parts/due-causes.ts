import { readPeriod } from '#kernel';
import { type CheckKind, splitInterval } from '#trade';
import { type Words, tell } from '../../table/index.js';
import { plural } from './format.js';

/** P12M -> 12 months, of whichever check; what is no period stays as it is written. */
function period(interval: string): string {
  const text = splitInterval(interval).period;
  const read = readPeriod(text);
  if (!read) return text;
  const parts = [
    ...(read.months > 0
      ? [read.months % 12 === 0 && read.months > 12 ? plural(read.months / 12, 'year') : plural(read.months, 'month')]
      : []),
    ...(read.days > 0 ? [plural(read.days, 'day')] : []),
  ];
  return parts.join(' and ') || text;
}

export const check: Words['check'] = {
  examination: 'examination',
  electrical: 'electrical check',
  'pre-use': 'pre-use check',
};

const theCheck = (of: CheckKind | undefined): string => (of === undefined ? '' : `the ${check[of]} of `);

const checkOf = (interval: string): string => check[splitInterval(interval).check];

export const interval: Words['interval'] = (text) => {
  const of = splitInterval(text).check;
  return of === 'examination' ? period(text) : `${check[of]}: ${period(text)}`;
};

export const dueCauses: Words['dueCauses'] = {
  failed: ({ on, check: of }) => `it failed its ${check[of ?? 'examination']} of ${on}`,
  'event-unanswered': ({ what, on }) => `${what} on ${on}, the day of its last examination, which does not name it as answered`,
  'event-since': ({ what, on }) => `${what} on ${on} and no examination since`,
  'not-examined': ({ interval }) => `no passed ${checkOf(interval)} for the interval of ${period(interval)} is on file`,
  'no-interval': () => 'no rule says how often it is examined',
  defect: ({ reportOn, by, check: of }) => `the report of ${theCheck(of)}${reportOn} sets ${by} for a defect`,
  report: ({ reportOn, by, underScheme, check: of }) =>
    `the report of ${theCheck(of)}${reportOn} sets ${by}${underScheme ? ' under an examination scheme' : ''}`,
  declared: ({ on, interval }) => `declaration of conformity ${on} plus ${period(interval)}`,
  examined: ({ on, interval }) => {
    const of = splitInterval(interval).check;
    return of === 'examination' ? `examined ${on}, plus ${period(interval)}` : `${check[of]} of ${on}, plus ${period(interval)}`;
  },
};

export const judged: Words['judged'] = {
  'in date throughout': ({ id, dueOn, because, from, to }) =>
    `${id} is in date on every day from ${from} to ${to}: last day ${dueOn} (${tell(dueCauses, because)}).`,
  'falls due': ({ id, dueOn, because }) =>
    `${id} is in date until ${dueOn} (${tell(dueCauses, because)}) and out of date after it; examine it on or before that day.`,
  overdue: ({ id, dueOn, because }) =>
    `${id} ran out on ${dueOn} (${tell(dueCauses, because)}); it must not be used before it is examined.`,
  'no record': ({ id, because }) => `${id} has no record: ${tell(dueCauses, because)}. It must not be used before it is examined.`,
  blocked: ({ id, because }) =>
    `${id} is blocked: ${tell(dueCauses, because)}. It must not be used before a competent person has examined it.`,
  'no interval': ({ id, because }) => `${id} is judged by its state, incidents, failures and defects alone: ${tell(dueCauses, because)}.`,
  failed: ({ id, because }) =>
    `${id} must not be used: ${tell(dueCauses, because)}. Repair or retire it; an examiner's visit alone does not bring it back.`,
};
