import { readDay, readRouteSheet, tourOfRoute } from './index.js';

const heading = ['date', 'last day', 'venue', 'city', 'time zone', 'design', 'show'];
const read = (rows: readonly (readonly string[])[], order?: 'day first' | 'month first') =>
  readRouteSheet([heading, ...rows], { zone: 'Europe/London', order });

describe('a day of a route sheet', () => {
  it.each([
    ['2027-03-04', '2027-03-04'],
    ['4.3.2027', '2027-03-04'],
    ['04.03.27', '2027-03-04'],
    ['Thu 4 Mar 2027', '2027-03-04'],
    ['4 March 2027', '2027-03-04'],
    ['Mar 4, 2027', '2027-03-04'],
    ['25/03/2027', '2027-03-25'],
    ['03/25/2027', '2027-03-25'],
    ['03/03/2027', '2027-03-03'],
    ['04/03/2027', 'either'],
    ['31.02.2027', undefined],
    ['next Thursday', undefined],
    ['', undefined],
  ])('%s is %s', (text, day) => expect(readDay(text)).toBe(day));

  it('that can be read two ways is read as somebody says', () => {
    expect(readDay('04/03/2027', 'day first')).toBe('2027-03-04');
    expect(readDay('04/03/2027', 'month first')).toBe('2027-04-03');
    expect(readDay('4.3.2027', 'month first')).toBe('2027-03-04');
  });
});

describe('a route sheet', () => {
  it('is a show a row, named by its city, in the order of its days, with a zone of its own or that of the sheet', () => {
    const { rows, faults } = read([
      ['2027-03-06', '', 'Corn Hall', 'Leeds', '', 'Arena', ''],
      ['2027-03-04', '2027-03-05', 'Halle 3', 'Berlin', 'Europe/Berlin', 'Club', ''],
      ['2027-03-08', '', 'Corn Hall', 'Leeds', '', 'ARENA', ''],
    ]);
    expect(faults).toEqual([]);
    const said = {
      name: 'Spring',
      depot: 'Ferry Lane',
      prepFrom: '2027-03-01',
      returnTo: '2027-03-10',
      jurisdictions: ['GB'],
      loadRule: 'ours',
    };
    const tour = tourOfRoute(rows, said, 'spring');
    expect(tour.shows.map(({ id, name, venue, timeZone, from, to, design }) => [id, name, venue, timeZone, from, to, design])).toEqual([
      ['berlin', 'Berlin', 'Halle 3', 'Europe/Berlin', '2027-03-04', '2027-03-05', 'club'],
      ['leeds', 'Leeds', 'Corn Hall', 'Europe/London', '2027-03-06', '2027-03-06', 'arena'],
      ['leeds-2', 'Leeds 2', 'Corn Hall', 'Europe/London', '2027-03-08', '2027-03-08', 'arena'],
    ]);
    expect(tour.designs).toEqual([
      { id: 'arena', name: 'Arena', hangs: [] },
      { id: 'club', name: 'Club', hangs: [] },
    ]);
  });

  it('tells all faults at once, and asks which comes first where a day can be read two ways', () => {
    const { rows, faults, needsOrder } = read([
      ['04/03/2027', '', 'Corn Hall', 'Leeds', '', '', ''],
      ['soon', '', '', 'Leeds', 'Mars/Olympus', '', ''],
      ['2027-03-09', '2027-03-08', 'Corn Hall', 'Leeds', '', '', ''],
    ]);
    expect(rows).toEqual([]);
    expect(needsOrder).toBe(true);
    expect(faults.map(({ row, column }) => [row, column])).toEqual([
      [3, 'date'],
      [3, 'venue'],
      [3, 'time zone'],
      [4, 'last day'],
    ]);
    expect(read([['04/03/2027', '', 'Corn Hall', 'Leeds', '', '', '']], 'day first').rows[0]?.from).toBe('2027-03-04');
  });

  it('without a column of days is no route sheet', () => {
    expect(readRouteSheet([['venue'], ['Corn Hall']], { zone: 'UTC' }).faults.map((each) => each.column)).toEqual(['date']);
  });
});
