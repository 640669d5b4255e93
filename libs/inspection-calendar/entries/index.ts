/** Entries of calendars that people subscribe to, as iCalendar text. */
export { type CalendarEntry, writeCalendar } from './i-calendar.js';
