import { hangOutline } from '#hang-statics';
import { hangFrom } from '../../tests/support/random-hang.js';

const raw = {
  tilt: 0,
  grid: { massKg: 80, cgBehindMm: 300, cgAboveMm: 50 },
  front: 100,
  span: 800,
  boxes: [0, 10].map((splayDeg) => ({ massKg: 60, frontHeightMm: 300, cgBehindMm: 250, cgBelowMm: 150, rearLeverMm: 500, splayDeg })),
};
const size = { frontHeightMm: 300, rearHeightMm: 200, depthMm: 600 };
const outline = (front: number, tiltDownDeg: number, lengthMm = 1200) =>
  hangOutline(hangFrom({ ...raw, front }), tiltDownDeg, [size, size], { lengthMm, heightMm: 140 });
const rounded = (points: readonly { xMm: number; zMm: number }[]) => points.map(({ xMm, zMm }) => [Math.round(xMm), Math.round(zMm)]);

describe('the outline of a hang', () => {
  it('level: the grid from before its front hole, boxes as trapezoids with the rear centred on the front', () => {
    const { grid, holes, boxes } = outline(100, 0);
    expect(rounded(grid)).toEqual([
      [30, 140],
      [-1170, 140],
      [-1170, 20],
      [30, 20],
    ]);
    expect(holes.map(({ hole, at }) => [hole, at.xMm, at.zMm])).toEqual([
      ['a', -100, 120],
      ['b', -900, 120],
    ]);
    expect(boxes.map((each) => each.position)).toEqual([1, 2]);
    expect(rounded(boxes[0]!.corners)).toEqual([
      [0, 0],
      [0, -300],
      [-600, -250],
      [-600, -50],
    ]);
  });

  it('holds every hole: one in front of the pivot, and one behind the end of the grid', () => {
    expect(rounded(outline(-200, 0).grid)[0]).toEqual([230, 140]);
    expect(rounded(outline(-200, 0, 400).grid)[1]).toEqual([-630, 140]);
  });

  it('turned nose down: each box at its own angle, with its front on its pivot and the next one on its lower corner', () => {
    const { boxes, grid } = outline(100, 5);
    expect(boxes.map((each) => each.tiltDownDeg)).toEqual([expect.closeTo(5, 9), expect.closeTo(15, 9)]);
    expect(boxes[1]!.frontPivot).toEqual(boxes[0]!.corners[1]);
    const [a, b, c, d] = boxes[1]!.corners as [Corner, Corner, Corner, Corner];
    expect(length(a, b)).toBeCloseTo(300, 9);
    expect(length(c, d)).toBeCloseTo(200, 9);
    expect(length(a, d)).toBeCloseTo(Math.hypot(600, 50), 9);
    expect(length(b, c)).toBeCloseTo(Math.hypot(600, 50), 9);
    // Nose down: the lower front corner lies behind the pivot, the rear higher than level.
    expect(b.xMm).toBeCloseTo(a.xMm - 300 * Math.sin((15 * Math.PI) / 180), 9);
    expect(d.zMm).toBeGreaterThan(a.zMm);
    expect(length(grid[0]!, grid[1]!)).toBeCloseTo(1200, 9);
  });
});

interface Corner {
  readonly xMm: number;
  readonly zMm: number;
}
const length = (p: Corner, q: Corner): number => Math.hypot(p.xMm - q.xMm, p.zMm - q.zMm);
