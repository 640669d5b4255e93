import { type AllocationAnswer, type AllocationCase, readAllocationCase } from '../case/index.js';
import { type AllocationMismatch, verifyAllocation } from './verify-allocation.js';

function read(input: unknown): AllocationCase {
  const result = readAllocationCase(input);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const problem = read({
  carts: [
    { id: 'K1', capacity: 2, stack: ['S2', 'S1'], carries: ['A'] },
    { id: 'K2', capacity: 2, stack: [] },
    { id: 'K3', capacity: 2, stack: ['S4'], givesOnly: true },
  ],
  loose: ['S3', 'S5'],
  boxes: { S1: 'A', S2: 'A', S3: 'A', S4: 'A', S5: 'B' },
  unusable: ['S2'],
  loads: [{ id: 'L', boxes: [{ model: 'A' }, { serial: 'S1' }] }],
});

const good: AllocationAnswer = {
  status: 'optimal',
  boxMoves: 2,
  bound: 2,
  stoppedBy: 'proof',
  assignments: [{ load: 'L', cart: 'K1', boxes: ['S3', 'S1'] }],
  moves: [
    { box: 'S2', from: 'K1', to: 'floor' },
    { box: 'S3', from: 'floor', to: 'K1' },
  ],
  measures: { cartsTouched: 1, work: 10 },
};

const [lift, put] = good.moves as [(typeof good.moves)[number], (typeof good.moves)[number]];

describe('the checker of box moves', () => {
  it('has nothing to say of an answer that can be carried out', () => {
    expect(verifyAllocation(problem, good)).toEqual([]);
  });

  it.each<[AllocationMismatch['code'], Partial<AllocationAnswer>]>([
    ['goes nowhere', { moves: [lift, put, { box: 'S3', from: 'K1', to: 'K1' }] }],
    ['not on the floor', { moves: [lift, { ...put, box: 'S4' }] }],
    ['not on top there', { moves: [{ ...lift, box: 'S1' }, put] }],
    ['no such cart', { moves: [lift, { ...put, to: 'K9' }] }],
    ['cart is full', { moves: [put, lift] }],
    ['cart out of use', { moves: [{ ...lift, to: 'K3' }, put] }],
    ['cart may not carry it', { moves: [lift, put, { box: 'S3', from: 'K1', to: 'floor' }, { box: 'S5', from: 'floor', to: 'K1' }] }],
    ['no cart given', { assignments: [] }],
    ['cart out of use', { assignments: [{ load: 'L', cart: 'K3', boxes: ['S4'] }] }],
    ['not what is said', { assignments: [{ load: 'L', cart: 'K1', boxes: ['S4', 'S1'] }] }],
    ['wrong height', { moves: [lift], assignments: [{ load: 'L', cart: 'K1', boxes: ['S1'] }] }],
    ['unusable box', { moves: [], assignments: [{ load: 'L', cart: 'K1', boxes: ['S2', 'S1'] }] }],
    ['not what is wanted', { moves: [lift, { ...put, box: 'S5' }], assignments: [{ load: 'L', cart: 'K1', boxes: ['S5', 'S1'] }] }],
    ['moves miscounted', { boxMoves: 3 }],
    ['bound above the plan', { bound: 3 }],
    ['wrongly called optimal', { bound: 1 }],
    ['no reason given', { status: 'infeasible' }],
  ])('names what is wrong: %s', (code, change) => {
    expect(verifyAllocation(problem, { ...good, ...change }).map((each) => each.code)).toContain(code);
  });

  it('refuses one cart for two loads', () => {
    const two = read({
      carts: [
        { id: 'K1', capacity: 1, stack: ['S1'] },
        { id: 'K2', capacity: 1, stack: ['S2'] },
      ],
      boxes: { S1: 'A', S2: 'A' },
      loads: [
        { id: 'L', boxes: [{ model: 'A' }] },
        { id: 'M', boxes: [{ model: 'A' }] },
      ],
    });
    const twice = ['L', 'M'].map((load) => ({ load, cart: 'K1', boxes: ['S1'] }));
    const answer: AllocationAnswer = { ...good, boxMoves: 0, bound: 0, moves: [], assignments: twice };
    expect(verifyAllocation(two, answer)).toEqual([{ code: 'cart given twice', load: 'M', cart: 'K1' }]);
  });

  it('refuses a cart that a load is barred from', () => {
    const barred = { ...problem, loads: problem.loads.map((load) => ({ ...load, notOn: ['K1'] })) };
    expect(verifyAllocation(barred, good)).toEqual([{ code: 'cart barred', load: 'L', cart: 'K1' }]);
    const other = { ...problem, loads: problem.loads.map((load) => ({ ...load, notOn: ['K2'] })) };
    expect(verifyAllocation(other, good)).toEqual([]);
  });

  it('takes a plan that is short for an answer where it says what is short', () => {
    const short: AllocationAnswer = { ...good, status: 'infeasible', reason: 'boxes short', short: [], moves: [], assignments: [] };
    expect(verifyAllocation(problem, short)).toEqual([{ code: 'no reason given' }]);
    expect(verifyAllocation(problem, { ...short, cartsShort: 1 } as unknown as AllocationAnswer)).toEqual([]);
  });
});
