import { loadIntegerProgramSolver } from '#runtime';
import { type IntegerProgramSolver, seededRandom } from '#kernel';
import type { AllocationCase } from '../case/index.js';
import { planTour } from './plan-tour.js';
import type { TourMoves } from './tour-case.js';
import { verifyTour } from './verify-tour.js';

type Load = AllocationCase['loads'][number];
const load = (id: string, ...models: string[]): Load => ({ id, boxes: models.map((model) => ({ model })) });

/** Two models, three carts of two, five boxes, some loose; shows of one or two loads. */
function smallTour(seed: number, shows: number): TourMoves {
  const random = seededRandom(seed);
  const boxes = Object.fromEntries(Array.from({ length: 5 }, (_, index) => [`B${index}`, random() < 0.5 ? 'A' : 'B']));
  const serials = Object.keys(boxes);
  const carts = ['K1', 'K2', 'K3'].map((id) => ({ id, capacity: 2, stack: serials.splice(0, Math.floor(3 * random())) }));
  const models = Object.values(boxes);
  const wanted = (show: number): Load[] => {
    const left = [...models].sort(() => random() - 0.5);
    return Array.from({ length: 1 + Math.floor(2 * random()) }, (_, index) =>
      load(`S${show} L${index}`, ...left.splice(0, 1 + Math.floor(2 * random()))),
    );
  };
  return {
    floor: { carts, loose: serials, boxes, unusable: [] },
    shows: Array.from({ length: shows }, (_, show) => ({ id: `S${show}`, weight: show === 0 ? 1 : 3, loads: wanted(show) })),
  };
}

interface Floor {
  readonly stacks: readonly (readonly string[])[];
  readonly loose: readonly string[];
}

/** The least that the tour can cost: every floor that can be reached, show by show, by breadth from all floors that served the show before. */
function leastCost({ floor, shows }: TourMoves): number {
  const keyOf = ({ stacks, loose }: Floor) => `${stacks.map((each) => each.join()).join('|')}#${[...loose].sort().join()}`;
  const capacity = floor.carts.map((each) => each.capacity);
  let reached = new Map([[keyOf({ stacks: floor.carts.map((each) => each.stack), loose: floor.loose }), 0]]);
  const floors = new Map<string, Floor>([[[...reached.keys()][0]!, { stacks: floor.carts.map((each) => each.stack), loose: floor.loose }]]);
  for (const { loads, weight } of shows) {
    const costs = new Map(reached);
    const waiting = [...reached].map(([key, cost]) => ({ key, cost }));
    while (waiting.length > 0) {
      waiting.sort((a, b) => b.cost - a.cost);
      const { key, cost } = waiting.pop()!;
      if (costs.get(key)! < cost) continue;
      for (const next of after(floors.get(key)!, capacity)) {
        const nextKey = keyOf(next);
        if ((costs.get(nextKey) ?? Infinity) <= cost + weight) continue;
        floors.set(nextKey, next);
        costs.set(nextKey, cost + weight);
        waiting.push({ key: nextKey, cost: cost + weight });
      }
    }
    reached = new Map([...costs].filter(([key]) => serves(floors.get(key)!, loads, floor.boxes)));
  }
  return Math.min(...reached.values());
}

function* after({ stacks, loose }: Floor, capacity: readonly number[]): Generator<Floor> {
  const tops = stacks.map((stack, index) => ({ from: index, box: stack[0] }));
  for (const { from, box } of [...tops, ...loose.map((each) => ({ from: -1, box: each }))]) {
    if (box === undefined) continue;
    for (let to = -1; to < stacks.length; to++) {
      if (to === from || (to >= 0 && stacks[to]!.length >= capacity[to]!)) continue;
      yield {
        stacks: stacks.map((stack, index) => (index === from ? stack.slice(1) : index === to ? [box, ...stack] : stack)),
        loose: [...(from < 0 ? loose.filter((each) => each !== box) : loose), ...(to < 0 ? [box] : [])],
      };
    }
  }
}

function serves({ stacks }: Floor, loads: readonly Load[], boxes: Readonly<Record<string, string>>): boolean {
  const place = (at: number, used: readonly number[]): boolean => {
    const wanted = loads[at];
    if (!wanted) return true;
    return stacks.some((stack, index) => {
      if (used.includes(index) || stack.length !== wanted.boxes.length) return false;
      const fits = wanted.boxes.every((box, slot) => 'model' in box && boxes[stack[slot]!] === box.model);
      return fits && place(at + 1, [...used, index]);
    });
  };
  return place(0, []);
}

describe('a tour planned as a whole', () => {
  let integerProgram: IntegerProgramSolver;
  beforeAll(async () => {
    integerProgram = await loadIntegerProgramSolver();
  });
  const plan = (tour: TourMoves, more: object = {}) =>
    planTour(tour, { integerProgram, workPerShow: 100_000, tries: 100, timeLimitSeconds: 1000, now: () => 0, ...more });

  it('makes ready at prep what the dock would build, where carts and boxes are there for it', () => {
    const boxes = { A1: 'A', A2: 'A', B1: 'B', B2: 'B' };
    const carts = ['K1', 'K2'].map((id) => ({ id, capacity: 2, stack: [] as string[] }));
    const tour: TourMoves = {
      floor: { carts, loose: Object.keys(boxes), boxes, unusable: [] },
      shows: [
        { id: 'prep', weight: 1, loads: [load('one', 'A', 'A')] },
        { id: 'second', weight: 3, loads: [load('two', 'B', 'B')] },
      ],
    };
    expect(plan(tour)).toMatchObject({ showByShow: 8, cost: 4 });
  });

  it('is never dearer than show by show, never below its bound, and carried out as it says', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const tour = smallTour(seed, 4);
      const made = plan(tour);
      if (made.status === 'infeasible') continue;
      expect(verifyTour(tour, made)).toEqual([]);
      expect(made.cost).toBeLessThanOrEqual(made.showByShow);
    }
  });

  it('costs what the cheapest of all tours costs on most small ones, and no bound is above it', () => {
    let [met, all] = [0, 0];
    for (let seed = 1; seed <= 14; seed++) {
      const tour = smallTour(seed, 3);
      const made = plan(tour);
      if (made.status === 'infeasible') continue;
      const least = leastCost(tour);
      all++;
      met += made.cost === least ? 1 : 0;
      expect(made.cost).toBeGreaterThanOrEqual(least);
      expect(made.bound).toBeLessThanOrEqual(least);
      if (made.status === 'optimal') expect(made.cost).toBe(least);
    }
    expect(all).toBeGreaterThanOrEqual(10);
    expect(met / all).toBeGreaterThanOrEqual(0.9);
  });

  it('leaves the shows that are fixed as they are', () => {
    const tour = smallTour(5, 4);
    const first = plan(tour);
    const changed = { ...tour, shows: tour.shows.map((show, index) => (index === 3 ? { ...show, loads: [load('new', 'A')] } : show)) };
    const made = plan(changed, { fixed: first.shows.slice(0, 3) });
    expect(made.shows.slice(0, 3)).toEqual(first.shows.slice(0, 3));
    expect(verifyTour(changed, made)).toEqual([]);
  });

  it('is not planned where a show cannot be served', () => {
    const tour = smallTour(5, 2);
    const short = { ...tour, shows: [...tour.shows, { id: 'too much', weight: 1, loads: [load('L', 'C')] }] };
    expect(plan(short)).toMatchObject({ status: 'infeasible', cannot: { show: 'too much', short: [{ model: 'C', missing: 1 }] } });
  });

  it('takes no box at a show that must not fly there, and still takes it before', () => {
    const boxes = { A1: 'A', A2: 'A' };
    const carts = ['K1', 'K2'].map((id) => ({ id, capacity: 1, stack: [] as string[] }));
    const tour: TourMoves = {
      floor: { carts, loose: ['A1', 'A2'], boxes, unusable: [] },
      shows: [
        { id: 'first', weight: 1, loads: [load('one', 'A')], unusable: ['A2'] },
        { id: 'second', weight: 3, loads: [load('two', 'A')], unusable: ['A1'] },
      ],
    };
    const made = plan(tour);
    expect(made.shows.map(({ answer }) => answer.assignments.find((each) => ['one', 'two'].includes(each.load))?.boxes)).toEqual([
      ['A1'],
      ['A2'],
    ]);
    expect(verifyTour(tour, made)).toEqual([]);
    const swapped = { ...tour, shows: tour.shows.map((show) => ({ ...show, unusable: ['A1', 'A2'] })) };
    expect(verifyTour(swapped, made).join()).toMatch(/must not fly/);
  });

  it('is seen through where a sum or a move is wrong', () => {
    const tour = smallTour(4, 3);
    const made = plan(tour);
    expect(verifyTour(tour, { ...made, cost: made.cost + 1 }).join()).toMatch(/costs/);
    expect(verifyTour(tour, { ...made, bound: made.cost + 5 }).join()).toMatch(/bound/);
    const busy = made.shows.findIndex((each) => each.answer.moves.length > 0);
    const cut = made.shows.map((each, index) =>
      index === busy ? { ...each, answer: { ...each.answer, moves: each.answer.moves.slice(1) } } : each,
    );
    expect(verifyTour(tour, { ...made, shows: cut }).length).toBeGreaterThan(0);
  });
});
