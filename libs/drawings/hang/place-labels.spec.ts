import { seededRandom } from '#kernel';
import { areaOf, labelSize, placeLabels } from './place-labels.js';

describe('labels of a plan drawing', () => {
  it('lie on no other, on no point and within the width, for 300 seeded plans of up to 60 points, crowded ones too', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = seededRandom(seed);
      const [count, wide, high] = [2 + Math.floor(random() * 59), 20 + random() * 860, 5 + random() * 400];
      const points = Array.from({ length: count }, (_, index) => ({
        x: 20 + random() * wide,
        y: 26 + random() * high,
        text: `Point ${index} ${'x'.repeat(Math.floor(random() * 30))}`,
      }));
      const labels = placeLabels(points, 900);
      const areas = labels.map(areaOf);
      areas.forEach((a, i) => {
        expect(a.left >= 0 && a.right <= 900 && a.top >= 0).toBe(true);
        const hits = areas.filter((b, j) => j > i && a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom);
        const onPoints = points.filter(
          ({ x, y }) =>
            a.left < x + labelSize.point && x - labelSize.point < a.right && a.top < y + labelSize.point && y - labelSize.point < a.bottom,
        );
        expect({ seed, i, hits, onPoints }).toEqual({ seed, i, hits: [], onPoints: [] });
      });
    }
  });

  it('stand right beside their point where there is room', () => {
    expect(placeLabels([{ x: 100, y: 100, text: 'A' }], 900)).toEqual([
      { x: 100, y: 100, text: 'A', labelX: 109, labelY: 104, isLed: false },
    ]);
    const [right] = placeLabels([{ x: 890, y: 100, text: 'Beam 4' }], 900);
    expect(right!.labelX).toBeLessThan(890);
  });
});
