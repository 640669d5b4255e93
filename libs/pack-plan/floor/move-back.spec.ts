import { type FloorRecord, type MoveMade, againstMoveBack } from './move-back.js';

const move = (box: string, from: string, to: string): MoveMade => ({ box, from, to });
const moved = (box: string, from: string, to: string): FloorRecord => ({ what: 'moved', ...move(box, from, to) });
/** `from` is where it stood until then. */
const movedBack = (box: string, from: string, to: string): FloorRecord => ({ what: 'moved back', ...move(box, from, to) });
const readAnew: FloorRecord = { what: 'read anew' };

const one = move('B1', 'K1', 'K2');
const against = (...records: FloorRecord[]) => againstMoveBack(records, one)?.code ?? null;

describe('a move is taken back', () => {
  it('while it is the last that was made with its box and its carts', () => {
    expect(against(moved('B1', 'K1', 'K2'))).toBeNull();
    expect(against(moved('B1', 'K1', 'K2'), moved('B7', 'K3', 'K4'), moved('B8', 'K4', 'floor'))).toBeNull();
  });

  it('not where it was never made, was made otherwise, or is taken back already', () => {
    expect(against()).toBe('not-moved');
    expect(against(moved('B1', 'K1', 'K3'))).toBe('not-moved');
    expect(against(moved('B1', 'K1', 'K2'), movedBack('B1', 'K2', 'K1'))).toBe('not-moved');
  });

  it.each<[string, FloorRecord]>([
    ['something stands on it', moved('B2', 'floor', 'K2')],
    ['it went on', moved('B1', 'K2', 'floor')],
    ['the box below it was taken from where it came from', moved('B2', 'K1', 'floor')],
    ['something stands where it came from', moved('B2', 'floor', 'K1')],
  ])('not where %s', (_what, later) => {
    expect(againstMoveBack([moved('B1', 'K1', 'K2'), later], one)).toEqual({
      code: 'moved-since',
      ...one,
      later: 'box' in later ? later.box : '',
    });
  });

  it('again, once what came after it is taken back', () => {
    expect(against(moved('B1', 'K1', 'K2'), moved('B2', 'floor', 'K2'), movedBack('B2', 'K2', 'floor'))).toBeNull();
    expect(against(moved('B1', 'K1', 'K2'), movedBack('B1', 'K2', 'K1'), moved('B1', 'K1', 'K2'))).toBeNull();
  });

  it('not where somebody wrote down since how the cart stands', () => {
    expect(against(moved('B1', 'K1', 'K2'), readAnew)).toBe('read-anew');
    expect(against(readAnew, moved('B1', 'K1', 'K2'))).toBeNull();
  });

  it('from the floor and to it: what else lies on the floor is not in the way', () => {
    const toFloor = move('B1', 'K1', 'floor');
    expect(againstMoveBack([moved('B1', 'K1', 'floor'), moved('B9', 'floor', 'K5')], toFloor)).toBeNull();
  });
});
