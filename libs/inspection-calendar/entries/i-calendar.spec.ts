import ICAL from 'ical.js';
import { type CalendarEntry, writeCalendar } from '#inspection-calendar';

const entry: CalendarEntry = {
  ...{ uid: 'visit-1@cartwright', on: '2027-02-28', sequence: 3, changedAt: new Date('2027-02-26T09:00:00.123Z'), isCancelled: false },
  ...{
    summary: 'Examiner at Ferry Lane; 2 items, H-01',
    description: 'Line one\nline \\two; ünïcödé 🎚 '.repeat(12),
    place: 'Ferry Lane, dock 2',
    alarmDaysBefore: 7,
  },
};

const read = (text: string): ICAL.Event[] =>
  new ICAL.Component(ICAL.parse(text) as []).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));

describe('a calendar of examinations', () => {
  it('comes back from an independent reader as it was written', () => {
    const [event] = read(writeCalendar('Examinations', [entry]));
    expect([event!.uid, event!.summary, event!.description, event!.location, event!.sequence]).toEqual([
      entry.uid,
      entry.summary,
      entry.description,
      entry.place,
      3,
    ]);
    expect([event!.startDate.isDate, event!.startDate.toString(), event!.endDate.toString()]).toEqual([true, '2027-02-28', '2027-03-01']);
    const [alarm] = event!.component.getAllSubcomponents('valarm');
    expect(String(alarm!.getFirstPropertyValue('trigger'))).toBe('-P7D');
  });

  it('keeps its lines within 75 octets, ended by CR LF, and breaks no character (RFC 5545, 3.1)', () => {
    const text = writeCalendar('Ü'.repeat(90), [entry]);
    const lines = text.split('\r\n');
    expect(lines.pop()).toBe('');
    for (const line of lines) {
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\r\n\ufffd]|[\ud800-\udbff]$/);
    }
    expect(lines.some((line) => Buffer.byteLength(line) > 72)).toBe(true);
  });

  it('says what fell away, without an alarm', () => {
    const [event] = read(writeCalendar('x', [{ ...entry, isCancelled: true, place: null }]));
    expect(event!.component.getFirstPropertyValue('status')).toBe('CANCELLED');
    expect(event!.component.getAllSubcomponents('valarm')).toEqual([]);
  });
});
