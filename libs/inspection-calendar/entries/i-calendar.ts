import { type PlainDate, addDays } from '#kernel';

/** An entry of a whole day. `alarmDaysBefore`: when calendars remind of it; null: never. */
export interface CalendarEntry {
  /** Never changes. */
  readonly uid: string;
  readonly on: PlainDate;
  /** Counts up with every change that is sent (RFC 5545, 3.8.7.4). */
  readonly sequence: number;
  readonly changedAt: Date;
  readonly isCancelled: boolean;
  readonly summary: string;
  readonly description: string;
  readonly place: string | null;
  readonly alarmDaysBefore: number | null;
}

/** A calendar as iCalendar text (RFC 5545): whole days without time or zone, lines of at most 75 octets ended by CR LF. */
export function writeCalendar(name: string, entries: readonly CalendarEntry[]): string {
  const lines = [
    ...['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Cartwright//Examinations//EN', 'CALSCALE:GREGORIAN', 'METHOD:PUBLISH'],
    ...[`NAME:${escaped(name)}`, `X-WR-CALNAME:${escaped(name)}`, 'REFRESH-INTERVAL;VALUE=DURATION:PT1H'],
    ...entries.flatMap(linesOf),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function linesOf(entry: CalendarEntry): string[] {
  const { uid, on, sequence, changedAt, isCancelled, summary, description, place, alarmDaysBefore } = entry;
  const alarm =
    alarmDaysBefore === null || isCancelled
      ? []
      : [
          ...['BEGIN:VALARM', 'ACTION:DISPLAY', `DESCRIPTION:${escaped(summary)}`],
          ...[`TRIGGER:${alarmDaysBefore === 0 ? 'PT0S' : `-P${alarmDaysBefore}D`}`, 'END:VALARM'],
        ];
  return [
    ...['BEGIN:VEVENT', `UID:${escaped(uid)}`, `DTSTAMP:${instant(changedAt)}`, `LAST-MODIFIED:${instant(changedAt)}`],
    ...[`DTSTART;VALUE=DATE:${day(on)}`, `DTEND;VALUE=DATE:${day(addDays(on, 1))}`, `SEQUENCE:${sequence}`],
    ...[`STATUS:${isCancelled ? 'CANCELLED' : 'CONFIRMED'}`, `SUMMARY:${escaped(summary)}`, `DESCRIPTION:${escaped(description)}`],
    ...(place === null ? [] : [`LOCATION:${escaped(place)}`]),
    ...['TRANSP:TRANSPARENT', ...alarm, 'END:VEVENT'],
  ];
}

const day = (on: PlainDate): string => on.replaceAll('-', '');
const instant = (at: Date): string => at.toISOString().replaceAll(/[-:]|\.\d+/g, '');

/** TEXT of RFC 5545, 3.3.11. */
const escaped = (text: string): string =>
  text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll(/\r\n|\r|\n/g, '\\n')
    .replaceAll(/[\p{Cc}]/gu, '');

const mostOctets = 75;

/** Folded by octets of UTF-8, never within a character (RFC 5545, 3.1). */
function folded(line: string): string {
  const parts: string[] = [];
  let [part, octets] = ['', 0];
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > mostOctets) {
      parts.push(part);
      // The blank that begins the next line counts with it.
      [part, octets] = ['', 1];
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join('\r\n ');
}

function octetsOf(character: string): number {
  const point = character.codePointAt(0) ?? 0;
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}
