import fc from 'fast-check';
import type { MoveMade } from './move-back.js';
import { type MoveAction, afterMove, movesInHand } from './moves-in-hand.js';

const move = (box: string, from: string, to: string): MoveMade => ({ box, from, to });
const did = (one: MoveMade): MoveAction => ({ kind: 'move', move: one });
const undid = (one: MoveMade): MoveAction => ({ kind: 'undo', move: one });

const floor = {
  carts: [
    { cart: 'K1', capacity: 3, boxes: ['B9', 'B1'] },
    { cart: 'K2', capacity: 3, boxes: [] },
  ],
  loose: ['B2'],
};
const first = move('B9', 'K1', 'floor');
const second = move('B2', 'floor', 'K1');
const list = { moves: [first, second], floor };

describe('a work list with what is on its way', () => {
  it('is the list itself where nothing is', () => {
    expect(movesInHand(list, [])).toEqual({ left: [first, second], floor });
  });

  it('leaves out what was done here, and shows the floor after it', () => {
    const { left, floor: now } = movesInHand(list, [did(first)]);
    expect(left).toEqual([second]);
    expect(now).toEqual({ carts: [{ ...floor.carts[0], boxes: ['B1'] }, floor.carts[1]], loose: ['B2', 'B9'] });
    expect(movesInHand(list, [did(first), did(second)]).floor.carts[0]!.boxes).toEqual(['B2', 'B1']);
  });

  it('a move that was taken back is the next again, sent or not', () => {
    expect(movesInHand(list, [did(first), undid(first)])).toEqual({ left: [first, second], floor });
    const taken = { moves: [second], floor: movesInHand(list, [did(first)]).floor };
    expect(movesInHand(taken, [did(first), undid(first)])).toEqual({ left: [first, second], floor: { ...floor, loose: ['B2'] } });
    expect(movesInHand(taken, [undid(first)]).left).toEqual([first, second]);
  });

  it('whichever of both the house has taken so far, the last word counts', () => {
    const taken = { moves: [second], floor: movesInHand(list, [did(first)]).floor };
    for (const seen of [list, taken]) {
      expect(movesInHand(seen, [did(first), undid(first)]).left).toEqual([first, second]);
      expect(movesInHand(seen, [did(first), undid(first), did(first)]).left).toEqual([second]);
    }
  });

  it('what the list shows already is not done twice', () => {
    const taken = { moves: [second], floor: movesInHand(list, [did(first)]).floor };
    expect(movesInHand(taken, [did(first)])).toEqual({ left: [second], floor: taken.floor });
    expect(movesInHand(list, [undid(first)])).toEqual({ left: [first, second], floor });
  });

  it('however often it is done and taken back, the last word counts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20 }), (times) => {
        const actions = Array.from({ length: times }, (_, index) => (index % 2 === 0 ? did(first) : undid(first)));
        expect(movesInHand(list, actions).left).toEqual(times % 2 === 0 ? [first, second] : [second]);
      }),
      { numRuns: 20, seed: 1 },
    );
  });
});

describe('the floor after a move', () => {
  it('stays as it is where the box is not on top of where it should be taken from', () => {
    expect(afterMove(floor, move('B1', 'K1', 'K2'))).toBe(floor);
    expect(afterMove(floor, move('B7', 'floor', 'K2'))).toBe(floor);
  });
});
