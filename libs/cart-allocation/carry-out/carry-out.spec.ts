import { type IntegerProgramSolver, WorkBudget, seededRandom } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { seededFloor } from '../../../tests/support/seeded-floors.js';
import { BoundProgram, type Choice, findShortage } from '../bound/index.js';
import { type FloorPlan, type NumberedMove, floorPlanOf, mayCarry, readAllocationCase } from '../case/index.js';
import { searchExactly } from '../exact/index.js';
import { beamSchedule, plainChoice, straightSchedule } from './index.js';

let integerProgram: IntegerProgramSolver;
beforeAll(async () => {
  integerProgram = await loadIntegerProgramSolver();
});

const budgetOf = (work = 1e7) => new WorkBudget({ work, timeLimitSeconds: 1e6, now: () => 0 });

/** Carries moves out: whether each can be made, and every load stands on its cart in the end, and on nothing that it does not want. */
function builds(floor: FloorPlan, cartOf: readonly number[], moves: readonly NumberedMove[]): boolean {
  const stacks = floor.carts.map((cart) => [...cart.stack]);
  const loose = new Set(floor.loose);
  for (const { box, from, to } of moves) {
    if (from < 0 ? !loose.delete(box) : stacks[from]!.pop() !== box) return false;
    if (to < 0) loose.add(box);
    else stacks[to]!.push(box);
  }
  return (
    new Set(cartOf).size === floor.loads.length &&
    floor.loads.every((load, index) => stacks[cartOf[index]!]!.map((box) => floor.kindOf[box]).join() === load.kinds.join())
  );
}

const touched = (moves: readonly NumberedMove[]) => new Set(moves.flatMap(({ from, to }) => [from, to]).filter((cart) => cart >= 0)).size;
const seeds = Array.from({ length: 8 }, (_, index) => index + 1);

/** By what was carried out and how: moves in all, and work; a wish that holds with the integer program at hand, which picks among equal choices. */
type Known = Readonly<Record<string, number>>;

describe.each<[string, Parameters<typeof seededFloor>[1], number, Known]>([
  [
    'some pinned',
    { pinned: 0.4 },
    71,
    {
      'least straight': 80,
      'least beam 6': 76,
      'work 6': 3900,
      'least beam 4 150': 76,
      'least beam 1 1': 85,
      'plain straight': 91,
      'plain beam 6': 87,
      'plain beam 4 150': 92,
      'plain beam 1 1': 100,
      'carts straight': 32,
      touched: 11,
      'carts beam 6': 28,
      'carts beam 4 150': 28,
      'carts beam 1 1': 33,
    },
  ],
  [
    'all pinned',
    { pinned: 1 },
    103,
    {
      'least straight': 109,
      'least beam 6': 106,
      'work 6': 2448,
      'least beam 4 150': 109,
      'least beam 1 1': 123,
      'plain straight': 130,
      'plain beam 6': 130,
      'plain beam 4 150': 131,
      'plain beam 1 1': 140,
    },
  ],
  [
    'none pinned',
    { pinned: 0 },
    61,
    {
      'least straight': 67,
      'least beam 6': 61,
      'work 6': 3413,
      'least beam 4 150': 61,
      'least beam 1 1': 73,
      'plain straight': 83,
      'plain beam 6': 77,
      'plain beam 4 150': 80,
      'plain beam 1 1': 92,
    },
  ],
  [
    'many carts',
    { carts: 14, loads: 9, pinned: 0.5 },
    160,
    {
      'least straight': 199,
      'least beam 6': 179,
      'work 6': 26486,
      'least beam 4 150': 227,
      'least beam 1 1': 239,
      'plain straight': 235,
      'plain beam 6': 227,
      'plain beam 4 150': 279,
      'plain beam 1 1': 292,
    },
  ],
])('a choice carried out, %s', (name, how, boundAtLeast, known) => {
  it('builds its loads, in as few moves and with as little work as when this was written', () => {
    const sums: Record<string, number> = {};
    let bounds = 0;
    const add = (what: string, by: number) => (sums[what] = (sums[what] ?? 0) + by);
    for (const seed of seeds) {
      const floor = floorPlanOf(seededFloor(seed, how));
      const solving = budgetOf();
      const program = new BoundProgram(floor, integerProgram, solving);
      const { bound, choice } = program.solve({ share: 0.5 });
      bounds += bound;
      const plain = plainChoice(floor);
      const ways: [string, Choice][] = [
        ['least', choice!],
        ['plain', plain],
        ...(name === 'some pinned' && seed <= 3
          ? [['carts', program.solve({ share: 0.2, fewest: 'carts touched' }).choice!] as [string, Choice]]
          : []),
      ];
      for (const [way, each] of ways) {
        const straight = straightSchedule(floor, each);
        expect(builds(floor, each.cartOf, straight)).toBe(true);
        add(`${way} straight`, straight.length);
        if (way === 'carts') add('touched', touched(straight));
        for (const [width, work] of [
          [6, 1e7],
          [4, 150],
          [1, 1],
        ] as const) {
          const budget = budgetOf(work);
          const moves = beamSchedule(floor, each, width, seededRandom(width), budget);
          expect(builds(floor, each.cartOf, moves)).toBe(true);
          expect(moves.length).toBeGreaterThanOrEqual(bound);
          add(`${way} beam ${width}${work === 1e7 ? '' : ` ${work}`}`, moves.length);
          if (work === 1e7) add(`work ${width}`, budget.workDone);
        }
      }
    }
    expect(bounds).toBeGreaterThanOrEqual(boundAtLeast);
    const above = Object.entries(sums).filter(([what, sum]) => !(sum <= known[what]!));
    expect(above).toEqual([]);
  });
});

describe('the exact search', () => {
  it('proves the fewest moves of seeded floors with as little work as when this was written', () => {
    // Part pinned; fewest moves of all floors together, by whatever way; units of work.
    for (const [pinned, fewest, mostWork] of [
      [0, 44, 3430],
      [0.5, 58, 11235],
      [1, 85, 39365],
    ] as const) {
      let [work, moves] = [0, 0];
      for (const seed of seeds) {
        const floor = floorPlanOf(seededFloor(seed, { carts: 5, loads: 3, pinned }));
        const budget = budgetOf(3e5);
        const answer = searchExactly(floor, 0, 40, budget);
        expect(builds(floor, answer.found!.cartOf, answer.found!.moves)).toBe(true);
        const { bound } = new BoundProgram(floor, integerProgram, budgetOf()).solve({ share: 0.5 });
        expect(bound).toBeLessThanOrEqual(answer.bound);
        work += budget.workDone;
        moves += answer.bound;
      }
      expect(moves).toBe(fewest);
      expect(work).toBeLessThanOrEqual(mostWork);
    }
  });
});

it('a plain choice gives each load a cart of its own that may carry it, wherever there is a way', () => {
  const random = seededRandom(3);
  let [some, none] = [0, 0];
  for (let round = 0; round < 200; round++) {
    const carries = () => 'ABC'.split('').filter(() => random() < 0.6);
    const carts = Array.from({ length: 4 }, (_, index) => ({
      id: `K${index}`,
      capacity: 1 + Math.floor(2 * random()),
      stack: [],
      carries: carries(),
      givesOnly: random() < 0.1,
    }));
    const loads = Array.from({ length: 3 }, (_, index) => ({
      id: `L${index}`,
      boxes: Array.from({ length: 1 + Math.floor(2 * random()) }, () => ({ model: 'ABC'[Math.floor(3 * random())]! })),
      notOn: random() < 0.3 ? ['K0'] : [],
    }));
    const serials = Array.from({ length: 18 }, (_, index) => `S${index}`);
    const read = readAllocationCase({
      carts,
      loose: serials,
      boxes: Object.fromEntries(serials.map((serial, index) => [serial, 'ABC'[index % 3]!])),
      loads,
    });
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const floor = floorPlanOf(read.value);
    const suits = (load: number, cart: number) =>
      !carts[cart]!.givesOnly &&
      !loads[load]!.notOn.includes(`K${cart}`) &&
      loads[load]!.boxes.length <= carts[cart]!.capacity &&
      loads[load]!.boxes.every(({ model }) => carts[cart]!.carries.includes(model));
    const all = [0, 1, 2, 3];
    const ways = all
      .flatMap((a) => all.flatMap((b) => all.map((c) => [a, b, c])))
      .filter((each) => new Set(each).size === 3 && each.every((cart, load) => suits(load, cart)));
    const shortage = findShortage(read.value, floor);
    expect(shortage === undefined).toBe(ways.length > 0);
    if (shortage) {
      none++;
      const homeless = loads.find((_, load) => !all.some((cart) => suits(load, cart)));
      expect(shortage.cartsShort).toMatchObject({
        code: homeless ? 'no cart may carry it' : 'no cart is left',
        loads: 3,
        carts: carts.filter((cart) => !cart.givesOnly).length,
        ...(homeless ? { load: homeless.id } : {}),
      });
      continue;
    }
    some++;
    const { cartOf, taken, aside } = plainChoice(floor);
    expect(new Set(cartOf).size).toBe(3);
    cartOf.forEach((cart, load) => expect(mayCarry(floor.carts[cart]!, floor.loads[load]!)).toBe(true));
    expect([taken.size, aside.size]).toEqual([0, 0]);
  }
  expect(some).toBeGreaterThan(40);
  expect(none).toBeGreaterThan(40);
});
