import type { AllocationAnswer } from '../case/index.js';
import { type AllocationCase, readAllocationCase } from '../case/index.js';
import { groupMoves, moveReasons, naiveBoxMoves } from './describe-moves.js';

function read(input: unknown): AllocationCase {
  const result = readAllocationCase(input);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const problem = read({
  carts: [
    { id: 'K1', capacity: 4, stack: ['S3', 'S2', 'S1'] },
    { id: 'K2', capacity: 4, stack: ['S5', 'S4'] },
    { id: 'K3', capacity: 4, stack: ['S7', 'S6'] },
    { id: 'K4', capacity: 4, stack: [] },
  ],
  loose: ['S8'],
  boxes: Object.fromEntries([1, 2, 3, 4, 5, 6, 7, 8].map((each) => [`S${each}`, 'A'])),
  unusable: ['S3'],
  loads: [
    { id: 'Left', boxes: [{ serial: 'S5' }, { serial: 'S8' }, { serial: 'S1' }] },
    { id: 'Right', boxes: [{ serial: 'S6' }, { serial: 'S4' }] },
  ],
});
const moves = [
  { box: 'S3', from: 'K1', to: 'floor' },
  { box: 'S2', from: 'K1', to: 'K4' },
  { box: 'S8', from: 'floor', to: 'K1' },
  { box: 'S5', from: 'K2', to: 'K1' },
  { box: 'S7', from: 'K3', to: 'floor' },
  { box: 'S6', from: 'K3', to: 'floor' },
  { box: 'S2', from: 'K4', to: 'floor' },
  { box: 'S6', from: 'floor', to: 'K2' },
  { box: 'S7', from: 'floor', to: 'K3' },
];
const answer: AllocationAnswer = {
  status: 'feasible',
  boxMoves: moves.length,
  bound: 0,
  stoppedBy: 'work',
  assignments: [
    { load: 'Left', cart: 'K1', boxes: ['S5', 'S8', 'S1'] },
    { load: 'Right', cart: 'K2', boxes: ['S6', 'S4'] },
  ],
  moves,
  measures: { cartsTouched: 4, work: 0 },
};

it('says why each move is made', () => {
  expect(moveReasons(problem, answer)).toEqual([
    { code: 'out-of-service' },
    { code: 'set-aside-for-cart', cart: 'floor' },
    { code: 'into-slot', load: 'Left', slot: 2 },
    { code: 'into-slot', load: 'Left', slot: 1 },
    { code: 'set-aside-for-cart', cart: 'K3' },
    { code: 'set-aside', load: 'Right' },
    { code: 'on-wanted-box' },
    { code: 'into-slot', load: 'Right', slot: 1 },
    { code: 'on-wanted-box' },
  ]);
  const room = { ...answer, moves: [{ box: 'S2', from: 'K1', to: 'floor' }] };
  expect(moveReasons(problem, room)).toEqual([{ code: 'makes-room', load: 'Left' }]);
});

it('lets a crew make moves at the same time that share no cart and no box', () => {
  expect(groupMoves(problem, answer)).toEqual([1, 2, 3, 4, 1, 2, 3, 5, 3]);
});

it('without a plan every cart in use comes down, the fullest first, and each load is built anew', () => {
  // The two fullest hold 3 and 2; the loads are 3 and 2 boxes.
  expect(naiveBoxMoves(problem)).toBe(3 + 2 + 3 + 2);
  expect(naiveBoxMoves(read({ ...problem, loads: problem.loads.slice(0, 1) }))).toBe(3 + 3);
});
