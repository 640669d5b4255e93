/** How a moment, a day and a number stand on every screen: one way each, whatever the language of the browser. */

type Instant = string | number | Date;

const two = (value: number): string => String(value).padStart(2, '0');

/** The day of a moment where this device is, YYYY-MM-DD. */
export function dayOf(instant: Instant): string {
  const at = new Date(instant);
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** The time of day of a moment where this device is, HH:MM. */
function timeOf(instant: Instant): string {
  const at = new Date(instant);
  return `${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** A moment as it is where this device is, YYYY-MM-DD HH:MM. */
export const momentOf = (instant: Instant): string => `${dayOf(instant)} ${timeOf(instant)}`;

/** A whole number, by thousands. */
export const countOf = (count: number): string => grouped.format(count);
const grouped = new Intl.NumberFormat('en');
