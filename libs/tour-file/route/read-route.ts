import type { PlainDate } from '#kernel';
import type { CsvFault } from '../csv/index.js';
import type { Column } from '../sheet/index.js';
import { name as nameForm, timeZone as timeZoneForm } from '../forms/index.js';
import { type DayOrder, readDay } from './read-day.js';

/** The columns of a route sheet; city, last day, time zone and design may be left out. */
export const routeColumns: readonly Column[] = [
  { heading: 'date', also: ['day', 'show date', 'load-in', 'load in', 'load-in day', 'from', 'datum', 'first day'] },
  { heading: 'last day', also: ['to', 'until', 'load-out', 'load out', 'load-out day', 'end'] },
  { heading: 'venue', also: ['hall', 'location', 'place', 'site'] },
  { heading: 'city', also: ['town', 'ort', 'stadt', 'ville'] },
  { heading: 'time zone', also: ['timezone', 'zone', 'tz'] },
  { heading: 'design', also: ['rig', 'system', 'set', 'hang design'] },
  { heading: 'show', also: ['name', 'title'] },
];

export interface RouteRow {
  readonly row: number;
  readonly name: string;
  readonly venue: string;
  readonly timeZone: string;
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** As it is written in the sheet; empty: none. */
  readonly design: string;
}

export interface RouteSheet {
  readonly rows: readonly RouteRow[];
  readonly faults: readonly CsvFault[];
  /** Days that can be read two ways: somebody has to say which. */
  readonly needsOrder: boolean;
}

/** Rows of a route sheet under our headings to shows; every fault with row, column, value and what would be right. A show without a zone has that of the sheet. */
export function readRouteSheet(
  records: readonly (readonly string[])[],
  { order, zone }: { order?: DayOrder | undefined; zone: string },
): RouteSheet {
  const [heading = [], ...given] = records;
  const faults: CsvFault[] = ['date', 'venue']
    .filter((each) => !heading.includes(each))
    .map((each) => ({ row: 1, column: each, value: '', wanted: `a column of the ${each}` }));
  if (faults.length > 0) return { rows: [], faults, needsOrder: false };
  let needsOrder = false;
  const rows = given.flatMap((record, index): RouteRow[] => {
    const row = index + 2;
    const cell = (name: string): string => (record[heading.indexOf(name)] ?? '').trim();
    const before = faults.length;
    const wrong = (column: string, wanted: string): void => void faults.push({ row, column, value: cell(column).slice(0, 80), wanted });
    const dayIn = (column: string): PlainDate => {
      const day = readDay(cell(column), order);
      if (day === 'either') needsOrder = true;
      else if (day === undefined) wrong(column, 'a day, such as 2027-03-04 or 4 Mar 2027');
      return day === undefined || day === 'either' ? '' : day;
    };
    const from = dayIn('date');
    const to = cell('last day') === '' ? from : dayIn('last day');
    if (from !== '' && to !== '' && to < from) wrong('last day', `no earlier than the first day, ${from}`);
    if (cell('venue') === '') wrong('venue', 'the name of the venue');
    for (const column of ['venue', 'city', 'design', 'show'])
      if (cell(column) !== '' && !nameForm.safeParse(cell(column)).success) wrong(column, 'one line of text, at most 80 characters');
    const timeZone = cell('time zone') || zone;
    if (!timeZoneForm.safeParse(timeZone).success) wrong('time zone', 'a zone of the time zone database, such as Europe/Berlin');
    if (faults.length > before || from === '' || to === '') return [];
    return [{ row, name: cell('show') || cell('city') || cell('venue'), venue: cell('venue'), timeZone, from, to, design: cell('design') }];
  });
  return { rows, faults, needsOrder };
}
