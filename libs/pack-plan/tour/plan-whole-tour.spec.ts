import type { IntegerProgramSolver } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import type { TourFile } from '#tour-file';
import { demoTour } from '../../../tests/support/demo-tour.js';
import type { WholeTour } from '../contract/index.js';
import { type WholeTourAsked, planWholeTour } from './plan-whole-tour.js';

let integerProgram: IntegerProgramSolver;
let first: WholeTour;
const weights = { depot: 1, dock: 3 };
const plan = (file: TourFile, asked: Partial<WholeTourAsked> = {}) =>
  planWholeTour(
    file,
    { weights, fixedUntil: 0, before: null, ...asked },
    { now: () => 0, integerProgram, timeLimitSeconds: 1e6, work: 200_000 },
  );
const planned = (file: TourFile, asked: Partial<WholeTourAsked> = {}): WholeTour => {
  const answer = plan(file, asked);
  if (answer.kind === 'cannot') throw new Error(JSON.stringify(answer.fact));
  return answer.tour;
};
beforeAll(async () => {
  integerProgram = await loadIntegerProgramSolver();
  first = planned(demoTour());
});

describe('the demo tour planned as a whole', () => {
  it('costs no more than show by show, and no less than its bound', () => {
    expect(first.stops.map((each) => each.show)).toEqual(['quayside', 'old-mill', 'fenland']);
    expect(first.cost).toBe(first.stops.reduce((sum, each) => sum + each.weight * each.moves.length, 0));
    expect(first.costApart).toBe(first.stops.reduce((sum, each) => sum + each.weight * each.movesApart, 0));
    expect(first.cost).toBeLessThanOrEqual(first.costApart);
    expect(first.bound).toBeLessThanOrEqual(first.cost);
  });

  it('has every place of every hang on a cart at its show, from where the show before left the boxes', () => {
    const stacks = new Map(first.floor.carts.map(({ cart, boxes }) => [cart, [...boxes]]));
    for (const stop of first.stops) {
      for (const { box, from, to } of stop.moves) {
        if (from !== 'floor') expect(stacks.get(from)!.shift()).toBe(box);
        if (to !== 'floor') stacks.get(to)!.unshift(box);
      }
      for (const { cart, boxes } of [...stop.loads, ...stop.ahead]) expect(stacks.get(cart)).toEqual(boxes);
      const show = demoTour().tour.shows.find((each) => each.id === stop.show)!;
      const places = show.hangs.reduce(
        (sum, hang) => sum + (hang.boxes.length || show.hangs.find((each) => each.id === hang.mirrorOf)!.boxes.length),
        0,
      );
      const filled = stop.loads.flatMap((each) => each.positions).length;
      expect(filled + stop.empty.flatMap((each) => each.positions).length).toBe(places);
    }
  });

  it('says of each load whether it stands or is rebuilt, and lifts nothing for what stands', () => {
    for (const { loads, ahead, show } of first.stops)
      for (const { how, setOn, cart } of [...loads, ...ahead]) {
        const stands = ['stood-already', 'rolls-on', 'was-made-ready', 'cut-down'].includes(how.code);
        expect([show, cart, stands]).toEqual([show, cart, setOn === 0]);
      }
    expect(first.stops[2]!.loads.some((each) => each.how.code === 'rolls-on')).toBe(true);
  });
});

describe('a change to a later show', () => {
  const changed = () =>
    demoTour((file) => {
      file.tour.shows[2].hangs[0].boxes.pop();
    });

  it('changes nothing of the shows before it', () => {
    const after = planned(changed(), { fixedUntil: 2, before: first });
    const parts = (tour: WholeTour) => tour.stops.slice(0, 2).map(({ moves, loads }) => ({ moves, loads }));
    expect(parts(after)).toEqual(parts(first));
    expect(after.fixedUntil).toBe(2);
  });

  it('is told where the show itself was to stay, and nothing is kept of it', () => {
    expect(plan(changed(), { fixedUntil: 3, before: first })).toMatchObject({
      kind: 'cannot',
      fact: { code: 'tour-not-as-kept', show: 'Fenland Dome', boxes: [] },
    });
  });

  it('is told by box where one of a show that stays must not fly any more', () => {
    const [box] = first.stops[0]!.loads[0]!.boxes;
    const quarantined = demoTour((file) => {
      Object.assign(
        file.items.find((item: any) => item.id === box),
        { state: 'quarantined', reason: 'a handle is bent' },
      );
    });
    expect(plan(quarantined, { fixedUntil: 1, before: first })).toMatchObject({
      kind: 'cannot',
      fact: { code: 'tour-not-as-kept', show: 'Quayside, night one', boxes: [box] },
    });
    const anew = plan(quarantined);
    expect(anew.kind).toBe('planned');
    if (anew.kind === 'planned') expect(anew.tour.stops.flatMap(({ loads }) => loads.flatMap(({ boxes }) => boxes))).not.toContain(box);
  });

  it('cannot keep what was never planned', () => {
    expect(plan(demoTour(), { fixedUntil: 1 })).toMatchObject({ kind: 'cannot', fact: { code: 'tour-nothing-to-keep' } });
  });
});

it('leaves places empty that no box is found for, as the plan of the show does', () => {
  expect(first.stops.map(({ empty }) => empty.flatMap((each) => each.positions).length)).toEqual([0, 0, 1]);
});

it('asks for two shows that want carts', () => {
  const file = demoTour((each) => each.tour.shows.splice(1));
  expect(plan(file)).toEqual({ kind: 'cannot', fact: { code: 'tour-too-short', shows: 1 } });
});
