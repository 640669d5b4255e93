import { demoTour } from '../../../tests/support/demo-tour.js';
import type { Show, Tour } from '../shapes/index.js';
import { brokenByMove } from './index.js';

const { tour: demo } = demoTour();
const base = demo.shows[0] as Show;
const show = (id: string, from: string, to = from): Show => ({ ...base, id, name: id.toUpperCase(), from, to });
/** Five shows, four of them after the one that is moved. */
const tour: Tour = {
  ...demo,
  prepFrom: '2027-03-01',
  returnTo: '2027-03-20',
  shows: [
    show('a', '2027-03-04'),
    show('b', '2027-03-06', '2027-03-07'),
    show('c', '2027-03-09'),
    show('d', '2027-03-12'),
    show('e', '2027-03-15'),
  ],
};
const nothing = { items: [], planned: [] };
const moved = (from: string, to = from, more: Partial<Parameters<typeof brokenByMove>[3]> = {}) =>
  brokenByMove(tour, 'a', { from, to }, { ...nothing, ...more });

describe('a show that is moved', () => {
  it('to where it is breaks nothing', () => expect(moved('2027-03-04', '2027-03-04', { planned: ['a'] })).toEqual([]));

  it('onto the days of another meets it, and says which days', () => {
    expect(moved('2027-03-07')).toEqual([{ is: 'overlaps', show: 'B', from: '2027-03-06', to: '2027-03-07' }]);
  });

  it('behind others changes places with each of them', () => {
    expect(moved('2027-03-10').map((each) => [each.is, 'show' in each && each.show])).toEqual([
      ['now after', 'B'],
      ['now after', 'C'],
      ['no day between', 'C'],
    ]);
  });

  it('out of the tour is said with the day of the tour', () => {
    expect(moved('2027-02-27')).toEqual([{ is: 'before the tour', day: '2027-03-01' }]);
    expect(moved('2027-03-21')).toContainEqual({ is: 'after the tour', day: '2027-03-20' });
    expect(moved('2027-03-05', '2027-03-04')).toEqual([{ is: 'no days' }]);
  });

  it('past the last day of what it flies says what runs out, but not what had run out before', () => {
    const items = [
      { item: 'H-1', lastDay: '2027-03-04' },
      { item: 'H-2', lastDay: '2027-03-05' },
      { item: 'H-3', lastDay: '2027-03-02' },
    ];
    expect(moved('2027-03-05', '2027-03-05', { items }).filter((each) => each.is === 'runs out')).toEqual([
      { is: 'runs out', item: 'H-1', lastDay: '2027-03-04' },
    ]);
  });

  it('makes the plans of the tour older than it is', () => {
    expect(moved('2027-03-03', '2027-03-03', { planned: ['c', 'a'] })).toEqual([{ is: 'plans grow old', shows: ['A', 'C'] }]);
  });
});
