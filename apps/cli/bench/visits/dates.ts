import { DateTime } from 'luxon';
import { addDays, addPeriod, seededRandom } from '#kernel';
import { dayIn, latestDay } from '../../../api/src/platform/config/config.js';
import { numberFrom, readArguments, say } from '../arguments.js';

/** Zones on both sides of the date line, one that crossed it (Apia, 2011-12-30), half hours, and changes of clocks in both halves of the world. */
const zones = [
  ...['Pacific/Kiritimati', 'Pacific/Apia', 'Pacific/Pago_Pago', 'Pacific/Auckland', 'Pacific/Chatham', 'Asia/Kolkata', 'Asia/Tokyo'],
  ...['Europe/London', 'Europe/Berlin', 'America/New_York', 'America/St_Johns', 'America/Los_Angeles', 'Australia/Lord_Howe', 'UTC'],
];

/** Random days and periods, and random instants in zones, beside Luxon (MIT licence); what does not agree, one sentence each. */
export function disagreements(pairs: number, seed: number): string[] {
  const random = seededRandom(seed);
  const upTo = (most: number): number => Math.floor(random() * most);
  const wrong: string[] = [];
  for (let pair = 0; pair < pairs; pair++) {
    const on = addDays('1950-01-01', upTo(90_000));
    const period = { months: upTo(3) === 0 ? 12 * upTo(20) : upTo(240), days: upTo(4) === 0 ? upTo(400) : 0 };
    const wanted = DateTime.fromISO(on, { zone: 'UTC' }).plus({ months: period.months }).plus({ days: period.days }).toISODate();
    const found = addPeriod(on, period);
    if (found !== wanted) wrong.push(`${on} + ${period.months} months + ${period.days} days: ${found}, by Luxon ${wanted}`);
    // Around the change of clocks and midnight, to the second.
    const near = DateTime.fromISO(`${addDays('1990-01-01', upTo(20_000))}T00:00:00`, { zone: zones[upTo(zones.length)]! });
    const now = near.plus({ seconds: upTo(4) === 0 ? upTo(5) - 2 : upTo(86_400) }).toJSDate();
    const zone = zones[upTo(zones.length)]!;
    const day = dayIn({ now: () => now }, zone);
    const wantedDay = DateTime.fromJSDate(now, { zone }).toISODate();
    if (day !== wantedDay) wrong.push(`${now.toISOString()} in ${zone}: ${day}, by Luxon ${wantedDay}`);
    const last = zones
      .map((each) => DateTime.fromJSDate(now, { zone: each }).toISODate() ?? '')
      .sort()
      .at(-1)!;
    if (latestDay({ now: () => now }) < last && now.getUTCFullYear() >= 1995) wrong.push(`${now.toISOString()}: it is ${last} somewhere`);
  }
  return wrong;
}

/** So many random pairs. */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const [pairs, seed] = [numberFrom(values, 'pairs', 100_000), numberFrom(values, 'seed', 1)];
  const wrong = disagreements(pairs, seed);
  for (const each of wrong.slice(0, 10)) say(each);
  say(JSON.stringify({ pairs, seed, wrong: wrong.length }));
  return wrong.length > 0 ? 1 : 0;
}
