import { allocationCaseOf, cartKey, floorPlanOf, keptBoxes, loadKey, mayCarry, placesKey, readAllocationCase } from './index.js';

const good = {
  carts: [
    { id: 'K1', capacity: 2, stack: ['S1'], carries: ['A', 'B'] },
    { id: 'K2', capacity: 0, stack: ['S2'], givesOnly: true, carries: ['B'] },
  ],
  loose: ['S3'],
  boxes: { S1: 'A', S2: 'A', S3: 'B' },
  unusable: ['S3'],
  absent: { S9: 'A' },
  loads: [{ id: 'L', notOn: ['K2'], boxes: [{ model: 'A' }, { serial: 'S3' }, { serial: 'S9' }] }],
};

const list = (count: number, of: (index: number) => string = (index) => `N${index}`) =>
  Array.from({ length: count }, (_, index) => of(index));

describe('a case of carts', () => {
  it('is taken as it is, also at its limits', () => {
    expect(readAllocationCase(good).ok).toBe(true);
    const large = { boxes: list(1000).map(() => ({ model: 'A' })), notOn: list(200, () => 'K1') };
    const named = 'N'.repeat(300);
    const carts = [
      { id: named, capacity: 1000, stack: [] },
      { id: 'K1', capacity: 0, stack: [], carries: list(200) },
    ];
    const read = readAllocationCase({ carts, boxes: {}, loads: [{ id: 'L', ...large }] });
    expect(read.ok ? [] : read.error).toEqual([]);
  });

  it.each<[string, object, string]>([
    ['a cart for a negative number', { carts: [{ id: 'K1', capacity: -1, stack: [] }] }, 'carts[0].capacity'],
    ['a cart for more than a thousand', { carts: [{ id: 'K1', capacity: 1001, stack: [] }] }, 'carts[0].capacity'],
    ['half a box of capacity', { carts: [{ id: 'K1', capacity: 1.5, stack: [] }] }, 'carts[0].capacity'],
    ['a cart without a name', { carts: [{ id: '', capacity: 1, stack: [] }] }, 'carts[0].id'],
    ['a name that is too long', { carts: [{ id: 'N'.repeat(301), capacity: 1, stack: [] }] }, 'carts[0].id'],
    ['a stack that is too high', { carts: [{ id: 'K1', capacity: 1000, stack: list(1001) }] }, 'carts[0].stack'],
    ['too many models on a cart', { carts: [{ id: 'K1', capacity: 1, stack: [], carries: list(201) }] }, 'carts[0].carries'],
    ['too many carts', { carts: list(20_001).map((id) => ({ id, capacity: 1, stack: [] })) }, 'carts'],
    ['a load barred from too many carts', { loads: [{ id: 'L', notOn: list(201), boxes: [{ model: 'A' }] }] }, 'loads[0].notOn'],
    ['a load too high', { loads: [{ id: 'L', boxes: list(1001).map((model) => ({ model })) }] }, 'loads[0].boxes'],
    ['a load of nothing', { loads: [{ id: 'L', boxes: [] }] }, 'loads[0].boxes'],
    ['a cart twice', { carts: [...good.carts, { id: 'K1', capacity: 1, stack: [] }] }, 'carts[2].id'],
    ['a cart that is the floor', { carts: [...good.carts, { id: 'floor', capacity: 1, stack: [] }] }, 'carts[2].id'],
    ['more on a cart than it holds', { carts: [{ ...good.carts[0], capacity: 0 }, good.carts[1]] }, 'carts[0].stack'],
    ['a box that its cart may not carry', { carts: [{ ...good.carts[0], carries: ['B'] }, good.carts[1]] }, 'carts[0].stack[0]'],
    ['a box twice on a cart', { carts: [{ ...good.carts[0], stack: ['S1', 'S1'] }, good.carts[1]] }, 'carts[0].stack[1]'],
    ['a box on a cart and loose', { loose: ['S3', 'S2'] }, 'loose[1]'],
    ['a loose box that nobody knows', { loose: ['S3', 'S7'] }, 'loose[1]'],
    ['a box without a place', { loose: [] }, 'boxes.S3'],
    ['an unusable box that nobody knows', { unusable: ['S3', 'S7'] }, 'unusable[1]'],
    ['an absent box that is here', { absent: { S9: 'A', S1: 'A' } }, 'absent.S1'],
    ['a load twice', { loads: [...good.loads, ...good.loads] }, 'loads[1].id'],
    ['a load barred from a cart that nobody knows', { loads: [{ ...good.loads[0], notOn: ['K1', 'K7'] }] }, 'loads[0].notOn[1]'],
    ['a pinned box that nobody knows', { loads: [{ id: 'L', boxes: [{ model: 'A' }, { serial: 'S7' }] }] }, 'loads[0].boxes[1].serial'],
  ])('is refused with %s, by field', (_what, change, field) => {
    const read = readAllocationCase({ ...good, ...change });
    expect(read.ok ? [] : read.error.map((each) => each.field)).toEqual([field]);
  });

  it('is refused with 200 faults at the most, and a name from the language is no box', () => {
    const read = readAllocationCase({ ...good, unusable: list(300) });
    expect(read.ok ? [] : read.error).toHaveLength(200);
    const strange = readAllocationCase({ ...good, loads: [{ id: 'L', boxes: [{ serial: 'constructor' }] }] });
    expect(strange.ok).toBe(false);
  });
});

describe('a floor in small numbers', () => {
  const plan = (change: object = {}, prefer?: Parameters<typeof floorPlanOf>[1]) => {
    const read = readAllocationCase({ ...good, absent: {}, loads: [{ id: 'L', boxes: [{ model: 'B' }, { serial: 'S1' }] }], ...change });
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    return floorPlanOf(read.value, prefer);
  };

  it('has a kind for each model and pinned box, and none for what no load can use', () => {
    const floor = plan();
    expect(floor.serials).toEqual(['S1', 'S2', 'S3']);
    // Bottom first: the pinned box, then model B; the only B is unusable, and no load wants model A.
    expect(floor.loads[0]!.kinds).toEqual([1, 2]);
    expect(floor.kindNames).toEqual(['', 'S1', 'B']);
    expect([floor.kindOf, floor.kindCount]).toEqual([[1, 0, 0], 3]);
  });

  it('takes what is preferred first: carts of low boxes, loads of low rank, loose boxes from the end', () => {
    const carts = ['K1', 'K2', 'K3'].map((id, index) => ({ id, capacity: 2, stack: [`S${3 - index}`] }));
    const change = {
      carts,
      loose: ['S4', 'S6', 'S5'],
      boxes: Object.fromEntries(list(6, (index) => `S${index + 1}`).map((serial) => [serial, 'A'])),
      loads: ['L1', 'L2'].map((id) => ({ id, boxes: [{ model: 'A' }] })),
    };
    const ranked = plan(change, {
      boxRank: (serial) => (serial === 'S5' ? 9 : Number(serial.slice(1))),
      loadRank: (load) => -Number(load.slice(1)),
    });
    expect(ranked.carts.map((each) => each.id)).toEqual(['K3', 'K2', 'K1']);
    expect(ranked.loads.map((each) => each.id)).toEqual(['L2', 'L1']);
    expect(ranked.loose.map((box) => ranked.serials[box])).toEqual(['S5', 'S6', 'S4']);
    expect(plan(change).loose.map((box) => ranked.serials[box])).toEqual(['S4', 'S5', 'S6']);
  });

  it('counts what stands right, and says what a cart may carry', () => {
    const floor = plan();
    const [load] = floor.loads;
    expect(floor.carts.map(({ stack }) => keptBoxes(floor, stack, load!.kinds))).toEqual([1, 0]);
    expect(keptBoxes(floor, [0, 0], load!.kinds)).toBe(1);
    expect(keptBoxes(floor, [0, 0, 0], [1, 1])).toBe(2);
    expect(floor.carts.map((cart) => mayCarry(cart, load!))).toEqual([true, false]);
    const [cart] = floor.carts;
    expect(mayCarry({ ...cart!, capacity: 1 }, load!)).toBe(false);
    expect(mayCarry({ ...cart!, carries: new Set(['A']) }, load!)).toBe(false);
    expect(mayCarry({ ...cart!, carries: undefined }, load!)).toBe(true);
    expect(mayCarry(cart!, { ...load!, notOn: ['K1'] })).toBe(false);
  });

  it('holds carts and loads for alike where nothing tells them apart', () => {
    const floor = plan();
    const [cart] = floor.carts;
    const [load] = floor.loads;
    const places = placesKey(cart!);
    expect(placesKey({ ...cart!, id: 'K9', stack: [] })).toBe(places);
    expect(placesKey({ ...cart!, carries: new Set(['B', 'A']) })).toBe(places);
    for (const other of [{ capacity: 3 }, { carries: new Set(['A']) }, { carries: undefined }, { isNamed: true }, { givesOnly: true }])
      expect(placesKey({ ...cart!, ...other })).not.toBe(places);
    expect(cartKey(floor, { ...cart!, id: 'K9' })).toBe(cartKey(floor, cart!));
    expect(cartKey(floor, { ...cart!, stack: [1] })).not.toBe(cartKey(floor, cart!));
    expect(loadKey({ ...load!, id: 'M', models: ['A', 'B', 'A'] })).toBe(loadKey(load!));
    for (const other of [{ kinds: [2, 1] }, { models: ['B'] }, { notOn: ['K1'] }])
      expect(loadKey({ ...load!, ...other })).not.toBe(loadKey(load!));
  });
});

it('a blocks world becomes a floor of towers, one cart each, with spare carts for every block', () => {
  const made = allocationCaseOf({ start: [['b', 'a'], ['c']], goal: [['a', 'b', 'c']] });
  expect(made.carts.map(({ id, capacity, stack }) => [id, capacity, ...stack])).toEqual([
    ['tower 1', 3, 'b', 'a'],
    ['tower 2', 3, 'c'],
    ['tower 3', 3],
    ['tower 4', 3],
    ['tower 5', 3],
  ]);
  expect(made.loads).toEqual([{ id: 'goal 1', boxes: [{ serial: 'a' }, { serial: 'b' }, { serial: 'c' }] }]);
});
