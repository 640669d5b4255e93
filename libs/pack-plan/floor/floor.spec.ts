import { loadIntegerProgramSolver } from '#runtime';
import type { CartLoad, PackPlan, SolveLimits } from '../contract/index.js';
import { betweenShows, checkCart, workListOf, type BoxFacts, type Floor } from './index.js';

let limits: SolveLimits;
beforeAll(async () => {
  limits = { integerProgram: await loadIntegerProgramSolver(), now: () => 0, timeLimitSeconds: 60 };
});

const load = (id: string, cart: string | null, serials: readonly (string | null)[], model = 'A') =>
  ({ id, cart, boxes: serials.map((serial, index) => ({ slot: index + 1, position: index + 1, model, serial })) }) as unknown as CartLoad;
const stack = (cart: string, boxes: readonly string[]) => ({ cart, capacity: 3, boxes });

/** K1 holds B1 under B9; B2 is on the floor. The plan builds B1 and B2 on K1 and leaves K2 as it is. */
const before: Floor = { carts: [stack('K1', ['B9', 'B1']), stack('K2', ['B3', 'B4'])], loose: ['B2'] };
const after: Floor = { carts: [stack('K1', ['B2', 'B1']), stack('K2', ['B3', 'B4'])], loose: ['B9'] };
const moves = [
  { number: 1, box: 'B9', from: 'K1', to: 'floor' },
  { number: 2, box: 'B2', from: 'floor', to: 'K1' },
];
const plan = {
  carts: {
    status: 'optimal',
    loads: [load('L1', 'K1', ['B2', 'B1']), load('L2', 'K2', ['B3', 'B4'])],
    moves,
    floorBefore: before,
    floorAfter: after,
  },
} as unknown as PackPlan;
const facts: BoxFacts = { model: () => 'A', against: () => null };
const withFacts = (against: BoxFacts['against']): BoxFacts => ({ ...facts, against });
const repair = { code: 'state', state: 'in repair' } as unknown as NonNullable<ReturnType<BoxFacts['against']>>;
const list = (floor: Floor, done: readonly number[] = [], of = plan, by = facts) => {
  const { status, moves: left, bound, fact, otherCarts } = workListOf(of, floor, by, new Set(done), limits);
  return { status, moves: left.map(({ box, from, to }) => `${box}: ${from} > ${to}`), bound, fact, otherCarts };
};

describe('what is left to do', () => {
  it('is the plan from the floor that it knows, then its rest, then nothing', () => {
    expect(list(before)).toEqual({
      status: 'as planned',
      moves: ['B9: K1 > floor', 'B2: floor > K1'],
      bound: 2,
      fact: { code: 'as-planned', moves: 2, bound: 2 },
      otherCarts: [],
    });
    const half = { carts: [stack('K1', ['B1']), before.carts[1]!], loose: ['B2', 'B9'] };
    expect(list(half, [1])).toMatchObject({ status: 'as planned', moves: ['B2: floor > K1'], bound: 1 });
    expect(list(after, [1, 2])).toMatchObject({ status: 'done', moves: [], bound: 0, fact: { code: 'done' } });
    expect(list(after)).toMatchObject({ status: 'done', moves: [] });
  });

  it('has a bound only where the plan is proven', () => {
    const unproven = { ...plan, carts: { ...plan.carts, status: 'feasible' } } as PackPlan;
    expect(list(before, [], unproven)).toMatchObject({ status: 'as planned', bound: 0 });
  });

  it('is a list anew, the shortest, where the floor is another one', () => {
    // B2 stands on B9 by mistake: B2 off, B9 off, B2 on is three; with the first move noted and not made, the plan's rest cannot be carried out.
    const other = { carts: [stack('K1', ['B2', 'B9', 'B1']), before.carts[1]!], loose: [] };
    expect(list(other)).toEqual({
      status: 'anew',
      moves: ['B2: K1 > floor', 'B9: K1 > floor', 'B2: floor > K1'],
      bound: 3,
      fact: { code: 'anew', moves: 3, bound: 3 },
      otherCarts: [],
    });
    expect(list(before, [1])).toMatchObject({ status: 'anew', bound: 2, moves: ['B9: K1 > floor', 'B2: floor > K1'] });
    expect(list(before, [2])).toMatchObject({ status: 'anew', bound: 2 });
  });

  it('says where a load stands on another cart than planned: rolling costs nothing', () => {
    const swapped = { carts: [stack('K1', ['B3', 'B4']), stack('K2', ['B2', 'B1'])], loose: ['B9'] };
    expect(list(swapped)).toMatchObject({
      status: 'done',
      otherCarts: [
        { load: 'L1', planned: 'K1', now: 'K2' },
        { load: 'L2', planned: 'K2', now: 'K1' },
      ],
    });
    const roll = { carts: [stack('K1', []), stack('K2', ['B3', 'B4']), stack('K3', ['B1'])], loose: ['B2', 'B9'] };
    expect(list(roll)).toMatchObject({
      status: 'anew',
      bound: 1,
      moves: ['B2: floor > K3'],
      otherCarts: [{ load: 'L1', planned: 'K1', now: 'K3' }],
    });
  });

  it('is none while a box of the plan must not fly, or is gone', () => {
    expect(
      list(
        before,
        [],
        plan,
        withFacts((id) => (id === 'B4' ? repair : null)),
      ),
    ).toMatchObject({
      status: 'cannot',
      moves: [],
      fact: { code: 'must-not-fly', boxes: [{ box: 'B4', load: 'L2', why: repair }] },
    });
    const gone = { carts: [stack('K1', ['B9', 'B1']), before.carts[1]!], loose: [] };
    expect(list(gone)).toMatchObject({ status: 'cannot', fact: { code: 'boxes-gone', boxes: ['B2'] } });
    // A box that no load holds may be as it is.
    expect(
      list(
        before,
        [],
        plan,
        withFacts((id) => (id === 'B9' ? repair : null)),
      ),
    ).toMatchObject({ status: 'as planned' });
  });

  it('builds nothing on a cart that only gives: out of service, too full, or with what it may not carry', () => {
    const roll = (k3: Partial<Floor['carts'][number]>, k1: Partial<Floor['carts'][number]> = {}) => ({
      carts: [{ ...stack('K1', []), ...k1 }, stack('K2', ['B3', 'B4']), { ...stack('K3', ['B1']), ...k3 }],
      loose: ['B2', 'B9'],
    });
    const onK1 = { status: 'anew', bound: 2, moves: ['B1: K3 > K1', 'B2: floor > K1'], otherCarts: [] };
    expect(list(roll({}))).toMatchObject({ bound: 1 });
    expect(list(roll({ givesOnly: true as const }))).toMatchObject(onK1);
    expect(list(roll({ carries: ['Z'] }))).toMatchObject(onK1);
    expect(list(roll({ carries: ['A'] }))).toMatchObject({ bound: 1 });
    expect(
      list(
        roll({}),
        [],
        plan,
        withFacts((id) => (id === 'K3' ? repair : null)),
      ),
    ).toMatchObject(onK1);
    const tooFull = {
      carts: [stack('K1', []), stack('K2', ['B3', 'B4']), { cart: 'K3', capacity: 2, boxes: ['B2', 'B9', 'B1'] }],
      loose: [],
    };
    const room = { ...tooFull, carts: [...tooFull.carts.slice(0, 2), { cart: 'K3', capacity: 3, boxes: ['B2', 'B9', 'B1'] }] };
    expect(list(room)).toMatchObject({ bound: 3, otherCarts: [{ now: 'K3' }] });
    expect(list(tooFull)).toMatchObject({ status: 'anew', otherCarts: [] });
    const swapped = [stack('K1', ['B1', 'B9']), before.carts[1]!];
    const none = { carts: swapped.map((each) => ({ ...each, givesOnly: true as const })), loose: ['B2'] };
    expect(list(none)).toMatchObject({ status: 'cannot', fact: { code: 'cannot-be-built' } });
  });

  it('asks nothing of loads whose places are all empty', () => {
    const empty = { ...plan, carts: { ...plan.carts, loads: [...plan.carts.loads, load('L3', null, [null])] } } as PackPlan;
    expect(list(after, [], empty)).toMatchObject({ status: 'done', otherCarts: [] });
    expect(list(before, [1], empty)).toMatchObject({ status: 'anew', bound: 2 });
  });
});

describe('serials read off a cart', () => {
  const [first] = plan.carts.loads;
  const read = (serials: readonly string[], barred?: Parameters<typeof checkCart>[4]) =>
    checkCart(plan, first!, serials, undefined, barred).map(({ fact, agrees, slot }) => ({ ...fact, agrees, slot }));

  it('agree, in capitals or not, with blanks or not', () => {
    expect(read(['B2', ' b1 '])).toEqual([
      { code: 'agrees', slot: 1, expected: 'B2', agrees: true },
      { code: 'agrees', slot: 2, expected: 'B1', agrees: true },
    ]);
  });

  it('say what belongs in a slot, and where the found box belongs', () => {
    const wrong = (slot: number, expected: string | null, found: string, home: object, isTwice = false) => ({
      code: 'wrong-box',
      agrees: false,
      slot,
      expected,
      found,
      home,
      isTwice,
    });
    expect(read(['B1', 'B2'])).toEqual([
      wrong(1, 'B2', 'B1', { code: 'this-cart', slot: 2 }),
      wrong(2, 'B1', 'B2', { code: 'this-cart', slot: 1 }),
    ]);
    expect(read(['B4', 'B77', 'K2'])).toEqual([
      wrong(1, 'B2', 'B4', { code: 'other-cart', cart: 'K2', load: 'L2', slot: 2 }),
      wrong(2, 'B1', 'B77', { code: 'nowhere' }),
      wrong(3, null, 'K2', { code: 'is-a-cart' }),
    ]);
    expect(read(['B2', 'B2'])[1]).toEqual(wrong(2, 'B1', 'B2', { code: 'this-cart', slot: 1 }, true));
    expect(read(['B77', 'B77'])[0]).toEqual({ code: 'read-twice', agrees: false, slot: 1, expected: 'B2', found: 'B77' });
  });

  it('say which slot is empty', () => {
    expect(read(['', ' '])).toEqual([
      { code: 'empty', agrees: false, slot: 1, expected: 'B2' },
      { code: 'empty', agrees: false, slot: 2, expected: 'B1' },
    ]);
    expect(read(['B2']).map((each) => each.code)).toEqual(['agrees', 'empty']);
  });

  it('do not agree where the right box must not fly; a wrong one is wrong first', () => {
    const barred = new Map([['B1', repair]]);
    expect(read(['B2', 'B1'], barred)[1]).toEqual({ code: 'barred', agrees: false, slot: 2, expected: 'B1', why: repair });
    expect(read(['B1', 'B2'], barred).map((each) => each.code)).toEqual(['wrong-box', 'wrong-box']);
  });

  it('that two of the plan could be meant by are not guessed', () => {
    const twins = { carts: { ...plan.carts, loads: [load('L1', 'K1', ['ab', 'AB'])] } } as unknown as PackPlan;
    expect(checkCart(twins, twins.carts.loads[0]!, ['Ab', 'AB']).map((each) => each.fact.code)).toEqual(['wrong-box', 'agrees']);
  });
});

describe('between two shows', () => {
  const next = (loads: readonly CartLoad[]) => ({ carts: { ...plan.carts, loads, moves: [] } }) as unknown as PackPlan;
  const between = (loads: readonly CartLoad[], by = facts) => betweenShows(plan, next(loads), by, () => undefined, limits);

  it('what flies again as it is rolls on, what nobody flies stays', () => {
    const { rollOn, stayOnTruck, restacked, work } = between([load('M1', 'K1', ['B2', 'B1'])]);
    expect({ rollOn, stayOnTruck, restacked }).toEqual({
      rollOn: [{ cart: 'K1', before: 'L1', after: 'M1' }],
      stayOnTruck: [{ cart: 'K2', load: 'L2' }],
      restacked: [],
    });
    expect(work).toMatchObject({ moves: [], bound: 0, fact: { code: 'between-shows', moves: 0, bound: 0 } });
  });

  it('a load rolls on by what stands on the cart, whatever cart was planned for it', () => {
    const { rollOn, stayOnTruck } = between([load('M1', 'K9', ['B3', 'B4']), load('M2', 'K1', ['B1', 'B2'])]);
    expect(rollOn).toEqual([{ cart: 'K2', before: 'L2', after: 'M1' }]);
    expect(stayOnTruck).toEqual([]);
  });

  it('says why a load is built otherwise', () => {
    const { restacked, work } = between([load('L1', 'K1', ['B1', 'B2']), load('L2', 'K2', ['B3'], 'Z'), load('NEW', null, ['B9'])]);
    expect(restacked.map(({ load: id, cart, fact }) => ({ id, cart, fact }))).toEqual([
      { id: 'L1', cart: 'K1', fact: { code: 'other-boxes', boxes: ['B1', 'B2'] } },
      { id: 'L2', cart: 'K2', fact: { code: 'other-models', wanted: ['Z'], before: ['A', 'A'] } },
      { id: 'NEW', cart: null, fact: { code: 'new-load', load: 'NEW' } },
    ]);
    expect(work.status).toBe('cannot');
  });

  it('names only the boxes that are others', () => {
    const { restacked, work } = between([load('L1', 'K1', ['B9', 'B1'])]);
    expect(restacked[0]!.fact).toEqual({ code: 'other-boxes', boxes: ['B9'] });
    expect(work).toMatchObject({ bound: 2, status: 'anew', fact: { code: 'between-shows', moves: 2, bound: 2 } });
  });

  it('a box that must not fly stops the work', () => {
    expect(
      between(
        [load('L1', 'K1', ['B2', 'B1'])],
        withFacts((id) => (id === 'B1' ? repair : null)),
      ).work,
    ).toMatchObject({
      status: 'cannot',
      fact: { code: 'must-not-fly' },
    });
  });

  it('a load on a cart that had none before neither rolls on nor is built otherwise', () => {
    const bare = { carts: { ...plan.carts, loads: [plan.carts.loads[0]!] } } as unknown as PackPlan;
    const { rollOn, restacked } = betweenShows(bare, next([load('M2', 'K2', ['B3', 'B4'])]), facts, () => undefined, limits);
    expect({ rollOn, restacked }).toEqual({ rollOn: [], restacked: [] });
  });
});
