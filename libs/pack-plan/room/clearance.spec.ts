import { seededRandom } from '#kernel';
import { sentencesOf } from '../../../tests/support/demo-tour.js';
import { plannedShow } from '../../../tests/support/planned-show.js';
import { type Place, type Prism, apartMm } from './apart.js';

const cube = (x: number, y: number, z: number, size = 1000): Prism => ({
  side: [
    [x, y, z],
    [x + size, y, z],
    [x + size, y, z + size],
    [x, y, z + size],
  ],
  through: [0, size, 0],
});

const dot = (p: Place, q: Place): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const minus = (p: Place, q: Place): Place => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const cornersOf = ({ side, through }: Prism): readonly Place[] => [
  ...side,
  ...side.map((each): Place => [each[0] + through[0], each[1] + through[1], each[2] + through[2]]),
];

/**
 * Bounds of the distance by another road (E. G. Gilbert, Minimum norm over a convex set, 1966): of the differences of corners the nearest mixture to nothing is
 * walked to; what it is long is never less than the distance, its least support never more.
 */
function bounds(a: Prism, b: Prism): { readonly least: number; readonly most: number } {
  const all = cornersOf(a).flatMap((p) => cornersOf(b).map((q) => minus(p, q)));
  let at = all[0]!;
  let least = 0;
  for (let round = 0; round < 4000; round++) {
    const far = all.reduce((best, each) => (dot(each, at) < dot(best, at) ? each : best));
    const most = Math.sqrt(dot(at, at));
    least = Math.max(least, dot(far, at) / most);
    if (most - least < 0.5) break;
    const way = minus(far, at);
    const share = Math.min(1, -dot(at, way) / dot(way, way));
    at = [at[0] + share * way[0], at[1] + share * way[1], at[2] + share * way[2]];
  }
  return { least, most: Math.sqrt(dot(at, at)) };
}

describe('two bodies in space', () => {
  it('are as far apart as cubes are by Pythagoras: face, edge and corner to one another', () => {
    expect(apartMm(cube(0, 0, 0), cube(1500, 0, 0))).toBeCloseTo(500, 9);
    expect(apartMm(cube(0, 0, 0), cube(1300, 1400, 0))).toBeCloseTo(500, 9);
    expect(apartMm(cube(0, 0, 0), cube(1100, 1200, 1200))).toBeCloseTo(300, 9);
    expect(apartMm(cube(0, 0, 0), cube(1000, 0, 0))).toBeCloseTo(0, 9);
  });

  it('stand in one another by the least way out', () => {
    expect(apartMm(cube(0, 0, 0), cube(950, 200, 300))).toBeCloseTo(-50, 9);
    expect(apartMm(cube(0, 0, 0), cube(400, 400, 970))).toBeCloseTo(-30, 9);
  });

  it('turned any way are as far apart as another road says', () => {
    const random = seededRandom(31);
    const between = (low: number, high: number) => low + random() * (high - low);
    let apart = 0;
    for (let each = 0; each < 40; each++) {
      const box = (): Prism => {
        const [x, y, z, turn, tilt] = [between(-1500, 1500), between(-1500, 1500), between(0, 2000), between(-3, 3), between(-0.5, 0.5)];
        const at = (u: number, w: number): Place => {
          const [p, q] = [u * Math.cos(tilt) + w * Math.sin(tilt), w * Math.cos(tilt) - u * Math.sin(tilt)];
          return [x + p * Math.cos(turn), y + p * Math.sin(turn), z + q];
        };
        const wide = between(600, 1300);
        return {
          side: [at(0, 0), at(0, -340), at(-540, -290), at(-540, -50)],
          through: [-wide * Math.sin(turn), wide * Math.cos(turn), 0],
        };
      };
      const [a, b] = [box(), box()];
      const mm = apartMm(a, b);
      expect(apartMm(b, a)).toBeCloseTo(mm, 6);
      const { least, most } = bounds(a, b);
      if (mm <= 0) {
        expect(least).toBeLessThan(1);
        continue;
      }
      apart++;
      expect(mm).toBeGreaterThan(least - 1e-6);
      expect(mm).toBeLessThan(most + 1e-6);
      expect(most - least).toBeLessThan(5);
    }
    expect(apart).toBeGreaterThan(25);
  });
});

const told = ({ findings }: ReturnType<typeof plannedShow>, code: string) => sentencesOf({ findings } as never, code);
const nearestOf = ({ picks }: ReturnType<typeof plannedShow>) =>
  picks.site!.clearances!.find((each) => each.hang === 'Main left' && each.otherHang === 'Centre')!;

describe('two hangs', () => {
  /** The centre straight beside the left hang, both facing the audience. */
  const beside = (yMm: number, show: object = {}) =>
    plannedShow((hangs, file) => {
      Object.assign(hangs[0], { stage: { xMm: 0, yMm: 8400, azimuthDeg: 0 } });
      Object.assign(hangs[2], { stage: { xMm: 0, yMm, azimuthDeg: 0 }, trimHeightMm: 11_500 });
      Object.assign(file.tour.shows[0], show);
    });

  it('beside one another are their places less half of each that is widest apart', () => {
    const { hang, otherHang, apartMm: mm, firstPart, secondPart } = nearestOf(beside(4000));
    // The widest are the carts, 1,180 mm across.
    expect({ hang, otherHang, firstPart, secondPart }).toEqual({
      hang: 'Main left',
      otherHang: 'Centre',
      firstPart: { code: 'cart' },
      secondPart: { code: 'cart' },
    });
    expect(mm).toBeCloseTo(4400 - 1180, 6);
  });

  it('are told nearer than the show wants, 1 mm each way, and only then', () => {
    expect(told(beside(4000), 'hangs-too-close')).toEqual([]);
    expect(told(beside(4000, { hangsApartMm: 3219 }), 'hangs-too-close')).toEqual([]);
    expect(told(beside(4000, { hangsApartMm: 3221 }), 'hangs-too-close')[0]).toBe(
      'Main left, a loaded cart rolled in, and Centre, a loaded cart rolled in, come within 3\u202f220 mm of one another; the show wants 3\u202f221 mm.',
    );
  });

  it('that stand in one another stop, with by how much, and 1 mm apart they do not', () => {
    expect(told(beside(8400 - 1181), 'hangs-touch')).toEqual([]);
    const { stops } = beside(8400 - 1179);
    expect(stops.filter((each) => each.code === 'hangs-touch').map((each) => each.sentence)).toEqual([
      'Main left, a loaded cart rolled in, and Centre, a loaded cart rolled in, stand in one another by 1 mm as they are drawn. Move or turn one of them.',
    ]);
  });

  it('one behind the other come as near as their drawn edges in the side plane, by splay and tilt', () => {
    const behind = (xMm: number) =>
      plannedShow((hangs) => {
        Object.assign(hangs[0], { stage: { xMm: 0, yMm: 8400, azimuthDeg: 0 } });
        Object.assign(hangs[2], { stage: { xMm, yMm: 8400, azimuthDeg: 0 }, trimHeightMm: 6000 });
      });
    const show = behind(-3500);
    const near = nearestOf(show);
    expect([near.firstPart.code, near.secondPart.code]).toEqual(['box', 'box']);
    const edges = (index: number) => {
      const { outline, stage, trimHeightMm } = show.picks.hangs[index]!;
      return [outline.grid, ...outline.boxes.map((each) => each.corners)].flatMap((corners) =>
        corners.flatMap((from, at) => {
          const to = corners[(at + 1) % corners.length]!;
          return Array.from({ length: 101 }, (_, step) => ({
            x: stage!.xMm + from.xMm + ((to.xMm - from.xMm) * step) / 100,
            z: trimHeightMm + from.zMm + ((to.zMm - from.zMm) * step) / 100,
          }));
        }),
      );
    };
    const theirs = edges(2);
    let least = Infinity;
    for (const p of edges(0)) for (const q of theirs) least = Math.min(least, Math.hypot(p.x - q.x, p.z - q.z));
    // Edges were stepped along by at most 12 mm.
    expect(near.apartMm).toBeLessThanOrEqual(least + 1e-6);
    expect(near.apartMm).toBeGreaterThan(least - 6);
    expect(nearestOf(behind(-3600)).apartMm).toBeGreaterThan(near.apartMm);
  });

  it('of the demo stand clear of one another, and of one without a place nothing is said', () => {
    const demo = plannedShow();
    expect(demo.picks.site!.clearances!.map((each) => [each.hang, each.otherHang])).toEqual([
      ['Main left', 'Main right'],
      ['Main left', 'Centre'],
      ['Main right', 'Centre'],
    ]);
    expect(Math.min(...demo.picks.site!.clearances!.map((each) => each.apartMm))).toBeGreaterThan(5000);
    expect(plannedShow((hangs) => delete hangs[2].stage).picks.site!.clearances).toHaveLength(1);
  });
});

describe('a cart that rolls in', () => {
  const under = (pointHeightMm: number, more: (hangs: any[], file: any) => void = () => undefined) =>
    plannedShow((hangs, file) => {
      Object.assign(hangs[2], { pointHeightMm });
      more(hangs, file);
    });
  const rolls = (show: ReturnType<typeof plannedShow>) => show.picks.hangs[2]!.room!.rollIns!;

  it('has what is free between the floor and the hang so far, its hoists drawn in', () => {
    const [first, second, third] = rolls(under(15_200));
    // Grid 14 at 2 degrees: hole C 129.57, hole L 150.51 mm above the pivot; two shackles, a sling, hooks and body take 104 + 1000 + 260 + 480.
    const pivot = 15_200 - 1844 - 150.51;
    expect(first!.cartMm).toBe(1720);
    expect(first!.freeMm).toBeCloseTo(pivot - 0, -1);
    // Four boxes at 2.5, 2.5, 2.5 and 3.5 degrees are 1,697.4 mm high at their fronts (demo-points-by-hand.md), and no rear is lower.
    expect(second!.freeMm).toBeCloseTo(pivot - 1358.4, 0);
    expect(third!.freeMm).toBeLessThan(second!.freeMm - 1300);
    expect(third!.leftMm).toBeCloseTo(third!.freeMm - 1720, 9);
  });

  it('is a stop where 1 mm is missing, and none where 1 mm is left', () => {
    const third = rolls(under(15_200))[2]!;
    const needed = 15_200 - third.leftMm;
    const lower = (hangs: any[]) => (hangs[2].trimHeightMm = 5000);
    expect(told(under(needed + 1, lower), 'no-room-for-cart')).toEqual([]);
    const [stop] = told(under(needed - 1, lower), 'no-room-for-cart');
    expect(stop).toMatch(
      /^Centre: the cart of Centre 9-12 does not roll in\..*the cart is 1\u202f720 mm high as it is packed: 1 mm are missing\.$/,
    );
  });

  it('stands on the deck where there is one, and nothing is said without a height of the points', () => {
    const deck = under(15_200, (hangs) => (hangs[2].deckHeightMm = 1200));
    expect(rolls(under(15_200))[2]!.leftMm - rolls(deck)[2]!.leftMm).toBeCloseTo(1200, 9);
    expect(rolls(plannedShow((hangs) => delete hangs[2].pointHeightMm))).toEqual([]);
  });
});

describe('a leg that its steel does not make', () => {
  it('is told what on file does, with one sling or two, and where nothing does', () => {
    const withStock = (lengths: readonly number[]) =>
      plannedShow((hangs, file) => {
        for (const lengthMm of lengths) file.catalogue.slings.push({ ...file.catalogue.slings[0], model: `Sling ${lengthMm}`, lengthMm });
        hangs[0].picks[0].bridle = {
          legs: [
            { xMm: 0, yMm: -1200, aboveMm: 2000 },
            { xMm: 0, yMm: 1200, aboveMm: 2000 },
          ],
          slings: ['Round sling 1 m'],
          shackles: ['Bow shackle 3.25', 'Bow shackle 3.25'],
        };
      });
    // √(1200² + 2000²) = 2332.4 mm, of which two shackles take 104.
    expect(told(withStock([]), 'leg-does-not-fit')[0]).toMatch(/Nothing on file makes that length with its shackles\.$/);
    expect(told(withStock([1230]), 'leg-does-not-fit')[0]).toMatch(
      /On file and long enough: Round sling 1 m, Sling 1230 with its shackles, 2\u202f334 mm; what it carries is compared once it is chosen\.$/,
    );
    expect(told(withStock([1230, 2240, 2225]), 'leg-does-not-fit')[0]).toMatch(/long enough: Sling 2225 with its shackles, 2\u202f329 mm;/);
  });
});
