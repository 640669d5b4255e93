import { WorkBudget } from '#kernel';
import { floorPlanOf, readAllocationCase } from '../case/index.js';
import { searchExactly } from '../exact/index.js';
import { readChoice } from './choice.js';
import { singleKinds } from './first-event.js';
import { classesOf } from './promising-pairs.js';

function floorOf(input: unknown) {
  const read = readAllocationCase(input);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return floorPlanOf(read.value);
}

describe('a choice read from a solution', () => {
  const floor = floorOf({
    carts: [
      { id: 'K1', capacity: 2, stack: ['S1'] },
      { id: 'K2', capacity: 2, stack: ['S2', 'S3'] },
    ],
    boxes: { S1: 'A', S2: 'B', S3: 'C' },
    loads: [{ id: 'L', boxes: [{ model: 'B' }, { model: 'A' }] }],
  });
  const carts = classesOf(['a', 'b']);
  const columns = new Map([
    ['x0_0', { cartClass: 0, loadClass: 0 }],
    ['d1_1', { cartClass: 1, taken: 1 }],
    ['d1_2', { cartClass: 1, taken: 2 }],
  ]);
  const choice = (values: Record<string, number>) => readChoice(floor, carts, [[0]], columns, new Map(Object.entries(values)));

  it('says which cart each load gets and what is taken of others', () => {
    expect(choice({ x0_0: 1, d1_1: 1 })).toEqual({ cartOf: [0], taken: new Map([[1, 1]]), aside: new Set() });
    expect(choice({ x0_0: 1, d1_2: 1 })?.taken).toEqual(new Map([[1, 2]]));
    expect(choice({ x0_0: 1.000001, d1_1: 0.999999 })).toBeDefined();
  });

  it.each([
    ['a part of a cart', { x0_0: 1, d1_1: 0.6, d1_2: 0.4 }],
    ['a load without a cart', { d1_1: 1 }],
    ['a cart twice', { x0_0: 1, d1_1: 1, d1_2: 1 }],
    ['a load twice', { x0_0: 2, d1_1: 1 }],
    ['too few boxes', { x0_0: 1 }],
  ])('is none where the solution has %s', (_what, values) => {
    expect(choice(values)).toBeUndefined();
  });

  it('knows of which kinds there is one box', () => {
    // The kind of no use is none, however many there are.
    expect([...singleKinds(floor)].sort()).toEqual([...new Set(floor.kindOf.filter((kind) => kind > 0))].sort());
    const two = floorOf({
      carts: [],
      loose: ['S1', 'S2', 'S3'],
      boxes: { S1: 'A', S2: 'A', S3: 'B' },
      loads: [{ id: 'L', boxes: [{ model: 'A' }] }],
    });
    expect(singleKinds(two).size).toBe(0);
  });
});

describe('loads that are alike, on carts that are alike', () => {
  it('are tried in one order only, and what is dug for is counted', () => {
    const count = 4;
    const wanted = ['A', 'B', 'C'];
    const serials = Array.from({ length: count }, (_, cart) => wanted.map((model) => `${model}${cart}`)).flat();
    const floor = floorOf({
      carts: Array.from({ length: 2 * count }, (_, index) => ({
        id: `K${index}`,
        capacity: 3,
        stack: index < count ? [`C${index}`, `A${index}`, `B${index}`] : [],
      })),
      boxes: Object.fromEntries(serials.map((serial) => [serial, serial[0]!])),
      loads: Array.from({ length: count }, (_, index) => ({ id: `L${index}`, boxes: wanted.map((model) => ({ model })) })),
    });
    // Below how many moves it looks, what it then knows, and units of work at the most.
    for (const [below, moves, most] of [
      [7, undefined, 144],
      [10, undefined, 320],
      [12, undefined, 480],
      [14, 13, 2552],
    ] as const) {
      const budget = new WorkBudget({ work: 1e6, timeLimitSeconds: 1e6, now: () => 0 });
      const { bound, found } = searchExactly(floor, 0, below, budget);
      expect([bound, found?.moves.length]).toEqual([moves ?? below, moves]);
      expect(budget.workDone).toBeLessThanOrEqual(most);
    }
  });
});
