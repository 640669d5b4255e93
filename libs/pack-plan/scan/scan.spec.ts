import fc from 'fast-check';
import type { ReasonAgainst } from '#trade';
import type { CartLoad } from '../contract/index.js';
import { commandOf } from './index.js';
import { type CartRead, type HouseAnswer, keyReader, matchCode, progressOf, readCode, seenCodes } from './index.js';

describe('a code as it is typed', () => {
  const known = ['K-006', 'K-060', 'P-016', 'p-016', 'SB 12', 'K1-1', 'K11'];
  const one = (id: string) => ({ is: 'one', id });

  it.each([
    ['K-006', 'K-006'],
    ['k-006', 'K-006'],
    ['k006', 'K-006'],
    ['k6', 'K-006'],
    [' K 0006 ', 'K-006'],
    ['k.60', 'K-060'],
    ['sb12', 'SB 12'],
    ['P-016', 'P-016'],
    ['https://house.example:4310/floor/a/b/read/K-006', 'K-006'],
    ['https://house.example/register/SB%2012?from=label', 'SB 12'],
    ['K11', 'K11'],
    ['k1 1', 'K1-1'],
  ])('%s is %s', (typed, id) => expect(matchCode(typed, known)).toEqual(one(id)));

  it('is never guessed where two could be meant', () => {
    expect(matchCode('p16', known)).toEqual({ is: 'several', ids: ['P-016', 'p-016'] });
  });

  it.each(['', '  ', 'K-0060x', '6', 'K-600', 'K-06-0', 'https://house.example/%E0%A4%A'])('“%s” is none of them', (typed) =>
    expect(matchCode(typed, known)).toEqual({ is: 'none' }),
  );
});

describe('a reader that types', () => {
  const type = (text: string, gap: number, start = 0) => {
    const read = keyReader();
    return [...text, 'Enter'].map((key, index) => read(key, start + index * gap)).at(-1);
  };

  it('is told from fingers by its pace', () => {
    expect(type('K-006', 12)).toBe('K-006');
    expect(type('K-006', 61)).toBeNull();
    expect(type('K1', 12)).toBeNull();
  });

  it('shift between letters is no letter, and what fingers typed before does not count', () => {
    const read = keyReader();
    expect(
      ['x', 'Shift', 'K', 'Shift', '-', '0', '1', 'Enter'].map((key, index) => read(key, index === 0 ? 0 : 500 + index * 10)).at(-1),
    ).toBe('K-01');
    expect(read('Enter', 2_000)).toBeNull();
  });
});

describe('codes that the camera sees', () => {
  it('are told once while they stay in view, and again when they come back', () => {
    const isNew = seenCodes();
    expect([0, 150, 300, 1_700].map((at) => isNew('K-006', at))).toEqual([true, false, false, false]);
    expect(isNew('P-016', 1_700)).toBe(true);
    expect(isNew('K-006', 3_300)).toBe(true);
  });
});

const load = (id: string, cart: string | null, serials: readonly (string | null)[], model = 'A') =>
  ({ id, cart, boxes: serials.map((serial, index) => ({ slot: index + 1, position: index + 1, model, serial })) }) as unknown as CartLoad;

const first = load('Left 1-4', 'K-001', ['B-1', 'B-2', 'B-3', 'B-4']);
const second = load('Left 5-8', 'K-002', ['B-5', 'B-6', 'B-7', 'B-8']);
const quarantined: ReasonAgainst = { code: 'state', state: 'quarantined', remark: 'link bent' };
const carts: CartRead['carts'] = {
  loads: [first, second],
  leftOut: [{ serial: 'B-66', model: 'A', reason: '', fact: quarantined }],
  floorBefore: { carts: [{ cart: 'K-003', capacity: 4, boxes: ['B-9'] }], loose: ['B-10'] },
};
const given = (more: Partial<CartRead> = {}): CartRead => ({ carts, load: first, read: [], barred: new Map(), ...more });
const house = (id: string, more: Partial<HouseAnswer> = {}): HouseAnswer => ({
  id,
  kind: 'box',
  model: 'A',
  count: null,
  whyNot: null,
  wantedSerials: [],
  ...more,
});

describe('what is read while a cart is confirmed', () => {
  it('boxes of the load are right, each once', () => {
    expect(readCode(given(), 'b3')).toEqual({ code: 'right', box: 'B-3', slot: 3 });
    expect(readCode(given({ read: ['B-3'] }), 'B-3')).toEqual({ code: 'read-before', box: 'B-3', slot: 3 });
  });

  it('says where a box of another cart belongs, and what belongs here', () => {
    expect(readCode(given({ read: ['B-1', 'B-2'] }), 'B-6')).toEqual({
      code: 'elsewhere',
      box: 'B-6',
      cart: 'K-002',
      load: 'Left 5-8',
      slot: 2,
      open: { slot: 3, expected: ['B-3'] },
    });
    expect(readCode(given({ read: ['B-2'] }), 'B-6')).toMatchObject({ open: { slot: null, expected: ['B-1', 'B-3', 'B-4'] } });
    expect(readCode(given({ read: ['B-4', 'B-1', 'B-2'] }), 'B-6')).toMatchObject({ open: { slot: 3, expected: ['B-3'] } });
  });

  it('what must not fly is refused before all else, right slot or not', () => {
    const barred = new Map([['B-2', quarantined]]);
    expect(readCode(given({ barred }), 'B-2')).toEqual({ code: 'must-not-fly', box: 'B-2', slot: 2, why: quarantined });
    expect(readCode(given(), 'B-66')).toEqual({ code: 'must-not-fly', box: 'B-66', slot: null, why: quarantined });
    expect(readCode(given({ house: house('B-9', { whyNot: quarantined }) }), 'B-9')).toMatchObject({ code: 'must-not-fly' });
    expect(readCode(given({ barred, load: second }), 'B-2')).toMatchObject({ code: 'must-not-fly', slot: null });
  });

  it('a box that no cart wants is a question for the house', () => {
    expect(readCode(given(), 'B-9')).toMatchObject({ code: 'ask-the-house', box: 'B-9' });
    expect(readCode(given(), 'b10')).toMatchObject({ code: 'ask-the-house', box: 'B-10' });
  });

  it('the same model, free and in date, may stand for a place that nobody wants by its serial', () => {
    expect(readCode(given({ read: ['B-1', 'B-2'], house: house('B-9') }), 'B-9')).toEqual({
      code: 'same-model',
      box: 'B-9',
      model: 'A',
      open: { slot: 3, expected: ['B-3', 'B-4'] },
    });
    const wanted = { read: ['B-1', 'B-2', 'B-4'], house: house('B-9', { wantedSerials: ['B-3'] }) };
    expect(readCode(given(wanted), 'B-9')).toMatchObject({ code: 'wanted-by-serial', open: { slot: 3, expected: ['B-3'] } });
    expect(readCode(given({ ...wanted, read: ['B-4'] }), 'B-9')).toMatchObject({
      code: 'same-model',
      open: { slot: null, expected: ['B-1', 'B-2'] },
    });
  });

  it('another model is wrong, and so is a box too many', () => {
    expect(readCode(given({ house: house('B-9', { model: 'Z' }) }), 'B-9')).toMatchObject({ code: 'wrong-model', model: 'Z' });
    expect(readCode(given({ read: ['B-1', 'B-2', 'B-3', 'B-4'], house: house('B-9') }), 'B-9')).toMatchObject({ code: 'wrong-model' });
  });

  it('carts are told from boxes: this one, another of the show, one that carries nothing', () => {
    expect(readCode(given(), 'k1')).toEqual({ code: 'this-cart', cart: 'K-001' });
    expect(readCode(given(), 'K-002')).toEqual({ code: 'other-cart', cart: 'K-002', load: 'Left 5-8' });
    expect(readCode(given(), 'K-003')).toEqual({ code: 'cart-not-planned', cart: 'K-003' });
    expect(readCode(given({ house: house('K-099', { kind: 'cart' }) }), 'K-099')).toEqual({ code: 'cart-not-planned', cart: 'K-099' });
  });

  it('lots, trunks and labels of others are answered as what they are', () => {
    expect(readCode(given({ house: house('PIN-L4', { kind: 'pin', model: 'Front pin', count: 200 }) }), 'PIN-L4')).toEqual({
      code: 'not-a-box',
      id: 'PIN-L4',
      kind: 'pin',
      model: 'Front pin',
      count: 200,
    });
    expect(readCode(given(), '4006381333931')).toEqual({ code: 'unknown', text: '4006381333931', isAsked: false });
    expect(readCode(given({ house: null }), '4006381333931')).toMatchObject({ isAsked: true });
  });
});

describe('a cart is read', () => {
  const serials = ['B-1', 'B-2', 'B-3', 'B-4'];

  it('open as long as one is missing; a place without a box stays open', () => {
    expect(progressOf(first, ['B-2'])).toMatchObject({ is: 'open', left: [{ slot: 1 }, { slot: 3 }, { slot: 4 }] });
    expect(progressOf(load('L', 'K', ['B-1', null]), ['B-1'])).toEqual({ is: 'open', left: [{ slot: 2, serial: null }] });
  });

  it('in order only when it was read from the top down', () => {
    expect(progressOf(first, serials)).toEqual({ is: 'in order', serials });
  });

  it('whatever the order, all of them right end in all there, and only the order of the plan in order', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(serials, { minLength: 4 }), (order) => {
        const read: string[] = [];
        for (const box of order) {
          expect(readCode(given({ read }), box).code).toBe('right');
          read.push(box);
        }
        const isTopDown = order.join() === serials.join();
        expect(progressOf(first, read)).toEqual(isTopDown ? { is: 'in order', serials } : { is: 'all there', serials, asRead: order });
      }),
      { numRuns: 40, seed: 1 },
    );
  });
});

describe('codes on a lanyard', () => {
  it('are read in any letters, as a reader with caps lock sends them; a serial is none', () => {
    expect(['floor done', ' FLOOR UNDO ', 'Floor Fault'].map(commandOf)).toEqual(['done', 'undo', 'fault']);
    expect(['FLOOR', 'DONE', 'K1-01', ''].map(commandOf)).toEqual([null, null, null, null]);
  });
});
