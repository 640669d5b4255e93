import { type PlainDate, isPlainDate } from '#kernel';

/** Which comes first where a day is written with figures alone. */
export type DayOrder = 'day first' | 'month first';

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const dated = (year: string, month: number, day: string): PlainDate | undefined => {
  const text = `${year.length === 2 ? `20${year}` : year}-${String(month).padStart(2, '0')}-${day.padStart(2, '0')}`;
  return isPlainDate(text) ? text : undefined;
};

/**
 * A day as a route sheet writes it: 2027-03-04, 4.3.2027, 4 Mar 2027, Mar 4, 2027; 04/03/2027 by the order that is told, or where it can be read one
 * way alone. undefined where it is no day; 'either' where both ways give one and nobody said which.
 */
export function readDay(text: string, order?: DayOrder): PlainDate | 'either' | undefined {
  const plain = text.trim().replace(/^\p{L}{2,}\.?,?\s+(?=\d)/u, '');
  const [, year, month, day] = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/.exec(plain) ?? [];
  if (year && month && day) return dated(year, Number(month), day);
  const worded =
    /^(\d{1,2})\.?[ -](\p{L}{3,})\.?,?[ -](\d{4}|\d{2})$/u.exec(plain) ?? /^(\p{L}{3,})\.? (\d{1,2}),? (\d{4})$/u.exec(text.trim());
  if (worded) return byWord(worded);
  const [, first, sign, second, last] = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d{2})$/.exec(plain) ?? [];
  if (!first || !second || !last) return undefined;
  const dayFirst = dated(last, Number(second), first);
  // With points between it is the day that comes first, wherever that is written.
  const monthFirst = sign === '.' ? undefined : dated(last, Number(first), second);
  if (dayFirst && monthFirst && dayFirst !== monthFirst)
    return order === undefined ? 'either' : order === 'day first' ? dayFirst : monthFirst;
  return dayFirst ?? monthFirst;
}

function byWord([, one = '', two = '', year = '']: RegExpExecArray): PlainDate | undefined {
  const [day, word] = /^\d/.test(one) ? [one, two] : [two, one];
  const month = months.indexOf(word.slice(0, 3).toLowerCase()) + 1;
  return month === 0 ? undefined : dated(year, month, day);
}
