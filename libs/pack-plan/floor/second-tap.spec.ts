import { seededRandom } from '#kernel';
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

  it('of forty double taps 50 to 600 ms apart, each marks one move', () => {
    const random = seededRandom(7);
    const isMeant = tapGate();
    let at = 0;
    let marked = 0;
    for (let pair = 0; pair < 40; pair++) {
      at += 2_000;
      for (const tap of [at, at + 50 + random() * 550]) if (isMeant(tap)) marked++;
    }
    expect(marked).toBe(40);
  });
});
