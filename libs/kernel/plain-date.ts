import { invariant } from './invariant.js';

/** A calendar day without time or zone, written YYYY-MM-DD (ISO 8601); strings compare in time order. */
export type PlainDate = string & { readonly __plainDate?: never };

const millisecondsPerDay = 86_400_000;
const pattern = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Whether the text is a day that exists, from year 1900 to 2999. */
export function isPlainDate(text: string): text is PlainDate {
  const match = pattern.exec(text);
  if (!match) return false;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  return year >= 1900 && year <= 2999 && month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}

export function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

/** Days since 1970-01-01. */
export function dayNumber(date: PlainDate): number {
  invariant(isPlainDate(date), `${date} is a day`);
  return Date.parse(`${date}T00:00:00Z`) / millisecondsPerDay;
}

export function dateOfDayNumber(day: number): PlainDate {
  return new Date(day * millisecondsPerDay).toISOString().slice(0, 10);
}

export const addDays = (date: PlainDate, days: number): PlainDate => dateOfDayNumber(dayNumber(date) + days);
export const daysBetween = (from: PlainDate, to: PlainDate): number => dayNumber(to) - dayNumber(from);

/** Every day from the first to the last, both included. */
export function eachDay(from: PlainDate, to: PlainDate): PlainDate[] {
  return Array.from({ length: Math.max(0, daysBetween(from, to) + 1) }, (_, index) => addDays(from, index));
}

/** A calendar period of ISO 8601: P6M, P1Y, P2Y6M, P14D, P2W. */
export interface Period {
  readonly months: number;
  readonly days: number;
}

export function readPeriod(text: string): Period | undefined {
  const weeks = /^P(\d{1,4})W$/.exec(text);
  if (weeks) return { months: 0, days: Number(weeks[1]) * 7 };
  const match = /^P(?=\d)(?:(\d{1,3})Y)?(?:(\d{1,4})M)?(?:(\d{1,5})D)?$/.exec(text);
  if (!match) return undefined;
  return { months: Number(match[1] ?? 0) * 12 + Number(match[2] ?? 0), days: Number(match[3] ?? 0) };
}

const letterOf: Readonly<Record<string, string>> = { year: 'Y', month: 'M', week: 'W', day: 'D' };

/** A period as people write it ("6 months", "1 year", "14 days") in the form of ISO 8601; any other text comes back trimmed, for its reader to judge. */
export function periodFromWords(text: string): string {
  const match = /^(\d{1,5})\s*(year|month|week|day)s?$/i.exec(text.trim());
  return match ? `P${Number(match[1])}${letterOf[match[2]!.toLowerCase()]}` : text.trim();
}

/** Periods with commas between; those of ISO 8601 may have blanks between instead. "1 year 6 months" is not guessed at: it comes back as one text. */
export function periodsFromWords(text: string): string[] {
  return text
    .split(/[,;]/)
    .flatMap((part) => (/^\s*P\S*(\s+P\S*)*\s*$/.test(part) ? part.trim().split(/\s+/) : [periodFromWords(part)]))
    .filter((each) => each !== '');
}

/** A period that examinations may come round in: at least a day, at most 100 years. */
export function isInterval(text: string): boolean {
  const period = readPeriod(text);
  return period !== undefined && period.months + period.days > 0 && period.months <= 1200 && period.days <= 36_525;
}

/** Months later, the day clamped to the end of the month (Temporal's `constrain`), then days later. */
export function addPeriod(date: PlainDate, period: Period): PlainDate {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  const monthIndex = year * 12 + (month - 1) + period.months;
  const [toYear, toMonth] = [Math.floor(monthIndex / 12), (monthIndex % 12) + 1];
  const clamped = Math.min(day, daysInMonth(toYear, toMonth));
  return addDays(`${String(toYear).padStart(4, '0')}-${String(toMonth).padStart(2, '0')}-${String(clamped).padStart(2, '0')}`, period.days);
}
