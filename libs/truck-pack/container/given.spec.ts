import fc from 'fast-check';
import { seededRandom } from '#kernel';
import { type Blocks, makeBlocks } from './blocks.js';
import { type ContainerCase, type ContainerInput, makeContainerCase, orientationsOf } from './container-case.js';
import { Given } from './given.js';
import { Room } from './room.js';

function made(input: ContainerInput): ContainerCase {
  const read = makeContainerCase(input);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const never = () => false;
type Box = ContainerInput['boxes'][number];
const box = (edges: Box['edges'], count: number, mayStand: Box['mayStand'] = [false, false, true]): Box => ({ edges, mayStand, count });
const numbersOf = (blocks: Blocks): number[] => Array.from({ length: blocks.count }, (_, block) => block);

const edge = fc.integer({ min: 3, max: 40 });
const kinds = fc.array(fc.record({ a: edge, b: edge, c: edge, count: fc.integer({ min: 1, max: 3 }) }), { minLength: 1, maxLength: 4 });

const within = (most: number) => fc.integer({ min: 1, max: most });
const spaces = fc.array(fc.tuple(within(120), within(100), within(90)), { minLength: 120, maxLength: 120 });

describe('what stays the same through a search', () => {
  it('finds blocks by size, the worthiest first', () => {
    fc.assert(
      fc.property(kinds, spaces, (each, asked) => {
        const problem = made({
          length: 120,
          width: 100,
          height: 90,
          boxes: each.map(({ a, b, c, count }) => box([a, b, c], count, [true, false, true])),
        });
        const given = new Given(problem, makeBlocks(problem, 1, never));
        const { index, blocks } = given;
        const [x, y, z] = blocks.size;
        const worth = (block: number) => blocks.volume[block]! / blocks.pieces[block]! ** 0.2;
        const all = numbersOf(blocks).sort((a, b) => worth(b) - worth(a) || a - b);
        for (const [lx, ly, lz] of [...asked, [120, 100, 90] as const]) {
          // In steps of twelve: what is a little larger is among them.
          const up = (own: number) => 12 * Math.ceil(own / 12);
          const wanted = all.filter((block) => x[block]! <= up(lx) && y[block]! <= up(ly) && z[block]! <= up(lz));
          for (let time = 0; time < 2; time++) expect(index.fitting(lx, ly, lz).join()).toBe(wanted.join());
        }
        for (const axis of [0, 1, 2] as const)
          for (let extent = 0; extent <= given.extent[axis]; extent++)
            expect(index.byExtent[axis].subarray(index.from[axis][extent], index.from[axis][extent + 1]).join()).toBe(
              all.filter((block) => blocks.size[axis][block] === extent).join(),
            );
        for (const block of all.slice(0, 20)) {
          const surface = 2 * (x[block]! * y[block]! + x[block]! * z[block]! + y[block]! * z[block]!);
          expect(given.face[0][block]).toBeCloseTo((y[block]! * z[block]!) / surface, 12);
          expect(given.face[1][block]).toBeCloseTo((x[block]! * z[block]!) / surface, 12);
          expect(given.face[2][block]).toBeCloseTo((x[block]! * y[block]!) / surface, 12);
        }
      }),
      { numRuns: 8, seed: 6 },
    );
  });

  it('tells which cuboids take no box: exactly in a small container', () => {
    fc.assert(
      fc.property(kinds, fc.array(fc.tuple(edge, edge, edge), { minLength: 30, maxLength: 30 }), (each, cuboids) => {
        const problem = made({
          length: 45,
          width: 45,
          height: 45,
          boxes: each.map(({ a, b, c, count }) => box([a, b, c], count, [true, false, true])),
        });
        const room = new Room(problem);
        const ways = problem.boxes.flatMap((own) => [...orientationsOf(own)]);
        for (const cuboid of cuboids)
          expect(room.takes(...cuboid)).toBe(ways.some((way) => way.every((own, axis) => own <= cuboid[axis]!)));
      }),
      { numRuns: 60, seed: 8 },
    );
  });

  it('and in a large one, with sides as long as its steps of 3', () => {
    const random = seededRandom(5);
    const boxes = Array.from({ length: 6 }, () =>
      box([20 + Math.floor(900 * random()), 20 + Math.floor(900 * random()), 20 + Math.floor(900 * random())], 2),
    );
    // 3,000 in 1,024 steps are steps of 3; the second box is wider than the container.
    const problem = made({
      length: 3000,
      width: 1500,
      height: 1000,
      boxes: [...boxes, box([2000, 1800, 10], 1), box([3000, 40, 45], 1), box([30, 1500, 48], 1), box([2, 60, 44], 1)],
    });
    const room = new Room(problem);
    const ways = problem.boxes.flatMap((own) => [...orientationsOf(own)]);
    let taken = 0;
    for (let time = 0; time < 2000; time++) {
      const cuboid = [3 * Math.floor(400 * random()) + 2, 3 * Math.floor(400 * random()) + 2, Math.floor(1000 * random())] as const;
      const takes = ways.some((way) => way.every((own, axis) => own <= cuboid[axis]!));
      if (takes) taken++;
      if (room.takes(...cuboid) !== takes) throw new Error(`${cuboid.join(' x ')} takes ${takes ? 'some' : 'none'}`);
    }
    expect(taken).toBeGreaterThan(200);
    const takes = (...cuboid: [number, number, number]) => ways.some((way) => way.every((own, axis) => own <= cuboid[axis]!));
    // Whole sides, sides that end a step, and a side thinner than a step.
    for (const [x, y, z] of ways) {
      const up = (own: number) => 3 * Math.floor(own / 3) + 2;
      if (x > 3000 || y > 1500 || x < 3 || y < 3) continue;
      expect([room.takes(up(x), up(y), z), room.takes(up(x) - 3, 1500, z), room.takes(3000, up(y) - 3, z)]).toEqual([
        true,
        takes(up(x) - 3, 1500, z),
        takes(3000, up(y) - 3, z),
      ]);
    }
    for (let x = 2; x <= 3000; x += 99) for (let y = 2; y <= 1500; y += 99) expect(room.takes(x, y, 50)).toBe(takes(x, y, 50));
    expect(room.takes(3000, 1500, 9)).toBe(false);
  });

  it('knows the longest sum of edges within an extent, and which kinds can end it', () => {
    // Cubes, single boxes, and kinds of which there are more than fit.
    const kind = fc.oneof(
      fc.record({ a: edge, count: fc.integer({ min: 0, max: 4 }) }).map(({ a, count }) => box([a, a, a], count, [true, true, true])),
      fc.tuple(edge, edge, edge, fc.constantFrom(1, 50)).map(([a, b, c, count]) => box([a, b, c], count)),
    );
    fc.assert(
      fc.property(fc.array(kind, { minLength: 1, maxLength: 3 }), fc.boolean(), (boxes, isMany) => {
        // Many kinds that fit nowhere shift the others into the second word of a set.
        const before = isMany ? Array.from({ length: 31 }, () => box([500, 500, 500], 1)) : [];
        const problem = made({ length: 90, width: 70, height: 50, boxes: [...before, ...boxes] });
        const { reach } = new Given(
          problem,
          makeBlocks(problem, 1, () => true),
        );
        for (const axis of [0, 1, 2] as const) {
          const most = [90, 70, 50][axis]!;
          let sums = new Set([0]);
          const enders = new Map<number, Set<number>>();
          problem.boxes.forEach((own, number) => {
            const edges = orientationsOf(own).map((way) => way[axis]);
            let last = sums;
            for (let used = 0; used < own.count && last.size > 0; used++) {
              last = new Set([...last].flatMap((sum) => edges.map((length) => sum + length)).filter((sum) => sum <= most));
              for (const sum of last) enders.set(sum, (enders.get(sum) ?? new Set()).add(number));
              if ([...last].every((sum) => sums.has(sum)) && used > most) break;
              sums = new Set([...sums, ...last]);
            }
          });
          const { longest, enders: bits, words } = reach[axis];
          const long = Array.from(longest, (_, extent) => Math.max(...[...sums].filter((each) => each <= extent)));
          expect(longest.join()).toBe(long.join());
          expect(longest).toHaveLength(most + 1);
          for (let extent = 1; extent <= most; extent++) {
            if (long[extent] !== extent) continue;
            const found = problem.boxes.flatMap((_, number) =>
              (bits[extent * words + (number >> 5)]! >>> (number & 31)) & 1 ? [number] : [],
            );
            expect(found.join()).toBe([...(enders.get(extent) ?? [])].sort((a, b) => a - b).join());
          }
        }
      }),
      { numRuns: 40, seed: 10 },
    );
  });
});
