import fc from 'fast-check';
import { cutHang } from './cut-hang.js';

describe('cutting a hang', () => {
  // Four boxes a cart, cart 1 = boxes 1-4: common practice of the trade, no published source.
  it('puts boxes 1 to 4 on the first cart and the part load at the bottom', () => {
    const boxes = Array.from({ length: 10 }, () => ({ model: 'A' }));
    expect(cutHang(boxes, { capacity: 4, partLoad: 'bottom', mayShare: () => true }).map((load) => load.positions)).toEqual([
      [1, 2, 3, 4],
      [5, 6, 7, 8],
      [9, 10],
    ]);
    expect(cutHang(boxes, { capacity: 4, partLoad: 'top', mayShare: () => true }).map((load) => load.positions)).toEqual([
      [1, 2],
      [3, 4, 5, 6],
      [7, 8, 9, 10],
    ]);
  });

  it('keeps models apart that may not share a cart, and every position once and in order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('A', 'B'), { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 1, max: 6 }),
        fc.boolean(),
        (models, capacity, share) => {
          const loads = cutHang(
            models.map((model) => ({ model })),
            { capacity, partLoad: 'bottom', mayShare: (a, b) => share || a === b },
          );
          expect(loads.flatMap((load) => load.positions)).toEqual(models.map((_, index) => index + 1));
          for (const { positions } of loads) {
            expect(positions.length).toBeLessThanOrEqual(capacity);
            if (!share) expect(new Set(positions.map((position) => models[position - 1])).size).toBe(1);
          }
          if (share) expect(loads).toHaveLength(Math.ceil(models.length / capacity));
        },
      ),
    );
  });
});
