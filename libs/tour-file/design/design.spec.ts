import { demoTour } from '../../../tests/support/demo-tour.js';
import type { Hang, Tour } from '../shapes/index.js';
import { changeDesign, differences, followDesign, keepAsDesign } from './index.js';

const { tour: demo } = demoTour();
const first = demo.shows[0] as Tour['shows'][number];
const withDesign = (): Tour => {
  const kept = keepAsDesign(demo, first.id, { id: 'arena', name: 'Arena' });
  const design = kept.designs?.[0];
  return { ...kept, shows: kept.shows.map((show) => followDesign(show, design)) };
};
const higher = (hangs: readonly Hang[], by: number): Hang[] => hangs.map((each) => ({ ...each, trimHeightMm: each.trimHeightMm + by }));
const designOf = (tour: Tour) => {
  const design = tour.designs?.[0];
  if (!design) throw new Error('the tour has a design');
  return design;
};
const before = '2000-01-01';

describe('a design', () => {
  it('is what a show hangs, kept by a name; shows that follow it hang the same', () => {
    const tour = withDesign();
    for (const show of tour.shows) {
      expect(show.hangs).toEqual(first.hangs);
      expect(differences(show, designOf(tour))).toEqual([]);
    }
  });

  it('changed, is followed by every show that left it as it was', () => {
    const tour = withDesign();
    const next = higher(designOf(tour).hangs, 100);
    const { tour: after, followed } = changeDesign(tour, 'arena', next, before);
    expect(designOf(after).hangs).toEqual(next);
    expect(after.shows.map((each) => each.hangs)).toEqual(tour.shows.map(() => next));
    expect(followed.map(({ show, kept }) => [show, kept])).toEqual(tour.shows.map(({ id }) => [id, []]));
  });

  it('leaves what differs at a show as it is there, and says so where the design changed it too', () => {
    const tour = withDesign();
    const [one, ...rest] = tour.shows;
    if (!one?.hangs[0]) throw new Error('the first show hangs something');
    const own: Tour = { ...tour, shows: [{ ...one, hangs: [{ ...one.hangs[0], trimHeightMm: 4321 }, ...one.hangs.slice(1)] }, ...rest] };
    const shown = own.shows[0] as Tour['shows'][number];
    expect(differences(shown, designOf(own)).map(({ hang, how, fields }) => [hang, how, fields])).toEqual([
      [one.hangs[0].id, 'changed', ['trimHeightMm']],
    ]);
    const next = designOf(own).hangs.map((each) => ({ ...each, trimHeightMm: each.trimHeightMm + 100, goesUp: 7 }));
    const { tour: after, followed } = changeDesign(own, 'arena', next, before);
    expect(after.shows[0]?.hangs[0]).toMatchObject({ trimHeightMm: 4321, goesUp: 7 });
    expect(after.shows[1]?.hangs).toEqual(next);
    expect(followed[0]?.kept.map(({ field }) => field)).toEqual(['trimHeightMm']);
    expect(followed[1]?.kept).toEqual([]);
  });

  it('keeps a hang away where a show left it out, and one that a show added', () => {
    const tour = withDesign();
    const [one, ...rest] = tour.shows;
    if (!one?.hangs[0]) throw new Error('the first show hangs something');
    const added = { ...one.hangs[0], id: 'Delay', name: 'Delay' };
    const own: Tour = { ...tour, shows: [{ ...one, hangs: [...one.hangs.slice(1), added] }, ...rest] };
    const { tour: after, followed } = changeDesign(own, 'arena', higher(designOf(own).hangs, 50), before);
    const ids = after.shows[0]?.hangs.map((each) => each.id);
    expect(ids).toEqual([...one.hangs.slice(1).map((each) => each.id), 'Delay']);
    expect(followed[0]?.kept).toHaveLength(1);
    expect(after.shows[0]?.hangs.at(-1)).toEqual(added);
  });

  it('takes a hang out where the design does, but not where the show has it otherwise', () => {
    const tour = withDesign();
    const [one, ...rest] = tour.shows;
    const out = one?.hangs[0];
    if (!one || !out) throw new Error('the first show hangs something');
    const own: Tour = { ...tour, shows: [{ ...one, hangs: [{ ...out, goesUp: 9 }, ...one.hangs.slice(1)] }, ...rest] };
    const { tour: after } = changeDesign(own, 'arena', designOf(own).hangs.slice(1), before);
    expect(after.shows[0]?.hangs.map((each) => each.id)).toContain(out.id);
    expect(after.shows[1]?.hangs.map((each) => each.id)).not.toContain(out.id);
  });

  it('leaves shows that are over as they hung', () => {
    const tour = withDesign();
    const today = tour.shows[1]?.from ?? '';
    const { tour: after, over } = changeDesign(tour, 'arena', higher(designOf(tour).hangs, 100), today);
    expect(over.map((each) => each.id)).toEqual([first.id]);
    expect(after.shows[0]?.hangs).toEqual(first.hangs);
    expect(after.shows[1]?.hangs).not.toEqual(first.hangs);
  });
});
