import { bounceMs, tapGate } from './second-tap.js';

describe('a second tap within 700 ms', () => {
  it('belongs to the first', () => {
    const isMeant = tapGate();
    expect([0, 50, 699].map((at) => isMeant(at))).toEqual([true, false, false]);
  });

  it('after that is meant', () => {
    const isMeant = tapGate();
    expect([1_000, 1_000 + bounceMs].map((at) => isMeant(at))).toEqual([true, true]);
  });

  it('a nervous finger marks once: each tap begins the time anew', () => {
    const isMeant = tapGate();
    expect([0, 600, 1_200, 1_800].map((at) => isMeant(at))).toEqual([true, false, false, false]);
    expect(isMeant(1_800 + bounceMs)).toBe(true);
  });
});
