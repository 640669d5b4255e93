import fc from 'fast-check';
import { demoTour } from '../../../tests/support/demo-tour.js';
import type { Hang, Show, Tour } from '../shapes/index.js';
import { mergeTours } from './index.js';

const { tour: demo } = demoTour();
const withShow = (tour: Tour, at: number, change: (show: Show) => Show): Tour => ({
  ...tour,
  shows: tour.shows.map((show, index) => (index === at ? change(show) : show)),
});
const withHang = (tour: Tour, show: number, at: number, change: Partial<Hang>): Tour =>
  withShow(tour, show, (each) => ({ ...each, hangs: each.hangs.map((hang, index) => (index === at ? { ...hang, ...change } : hang)) }));
const mergedOf = (was: Tour, wanted: Tour, now: Tour): Tour => {
  const answer = mergeTours(was, wanted, now);
  if ('clashes' in answer) throw new Error(JSON.stringify(answer.clashes));
  return answer.merged;
};

describe('two people in one tour', () => {
  it('in different hangs of a show both hold', () => {
    const merged = mergedOf(demo, withHang(demo, 0, 0, { trimHeightMm: 7100 }), withHang(demo, 0, 1, { trimHeightMm: 7200 }));
    expect(merged).toEqual(withHang(withHang(demo, 0, 0, { trimHeightMm: 7100 }), 0, 1, { trimHeightMm: 7200 }));
  });

  it('in different fields of a hang both hold', () => {
    const merged = mergedOf(demo, withHang(demo, 0, 0, { trimHeightMm: 7100 }), withHang(demo, 0, 0, { goesUp: 4 }));
    expect(merged).toEqual(withHang(demo, 0, 0, { trimHeightMm: 7100, goesUp: 4 }));
  });

  it('in the same field are told apart, with both values and the place', () => {
    const answer = mergeTours(demo, withHang(demo, 1, 0, { trimHeightMm: 7100 }), withHang(demo, 1, 0, { trimHeightMm: 7200 }));
    expect(answer).toEqual({ clashes: [{ path: 'shows[1].hangs[0].trimHeightMm', yours: 7100, onFile: 7200 }] });
  });

  it('one who takes a hang out while the other changes it is told', () => {
    const without = withShow(demo, 0, (show) => ({ ...show, hangs: show.hangs.slice(1) }));
    expect(mergeTours(demo, without, withHang(demo, 0, 0, { goesUp: 4 }))).toMatchObject({
      clashes: [{ path: `shows[0].hangs.${demo.shows[0]?.hangs[0]?.id}`, yours: null }],
    });
    expect(mergedOf(demo, without, withHang(demo, 0, 1, { goesUp: 4 })).shows[0]?.hangs[0]?.goesUp).toBe(4);
  });

  it('a show, a hang or a case that one adds is there beside what the other adds', () => {
    const [first] = demo.shows;
    if (!first) throw new Error('there is a show');
    const one: Tour = {
      ...demo,
      shows: [...demo.shows, { ...first, id: 'one', name: 'One' }],
      freight: [...demo.freight, { case: 'X-1' }],
    };
    const other: Tour = {
      ...demo,
      shows: [...demo.shows, { ...first, id: 'other', name: 'Other' }],
      freight: demo.freight.slice(1),
      trucks: [],
    };
    const merged = mergedOf(demo, one, other);
    expect(merged.shows.map((each) => each.id).sort()).toEqual([...demo.shows.map((each) => each.id), 'one', 'other'].sort());
    expect(merged.freight).toEqual([...demo.freight.slice(1), { case: 'X-1' }]);
    expect(merged.trucks).toEqual([]);
  });

  it('nothing changed by the one is what the other made of it, whatever that is', () => {
    const value = fc.record({
      show: fc.nat(demo.shows.length - 1),
      hang: fc.nat(2),
      trimHeightMm: fc.integer({ min: 1, max: 9000 }),
      goesUp: fc.integer({ min: 1, max: 9 }),
    });
    fc.assert(
      fc.property(fc.array(value, { maxLength: 6 }), (changes) => {
        const made = changes.reduce((tour, { show, hang, ...change }) => withHang(tour, show, hang, change), demo);
        expect(mergedOf(demo, demo, made)).toEqual(made);
        expect(mergedOf(demo, made, demo)).toEqual(made);
        expect(mergedOf(demo, made, made)).toEqual(made);
      }),
      { numRuns: 40, seed: 1 },
    );
  });
});
