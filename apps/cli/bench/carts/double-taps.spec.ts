import { doubleTaps } from './double-taps.js';

describe('double taps on the floor', () => {
  it('mark one move each, whatever the gap', () => {
    for (const seed of [1, 2, 3]) expect(doubleTaps(20, seed)).toEqual({ pairs: 20, marked: 20, notMeant: 0 });
  });
});
