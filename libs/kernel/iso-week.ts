import { type PlainDate, addDays, dayNumber } from './plain-date.js';

/** The week of ISO 8601 a day lies in, such as 2027-W10; week 1 holds the first Thursday of its year. `weekday`: 1 = Monday. */
export function isoWeekOf(date: PlainDate): { readonly week: string; readonly weekday: number } {
  const weekday = ((((dayNumber(date) + 3) % 7) + 7) % 7) + 1;
  const thursday = addDays(date, 4 - weekday);
  const year = thursday.slice(0, 4);
  const number = Math.floor((dayNumber(thursday) - dayNumber(`${year}-01-01`)) / 7) + 1;
  return { week: `${year}-W${String(number).padStart(2, '0')}`, weekday };
}
