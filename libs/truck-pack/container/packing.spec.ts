import fc from 'fast-check';
import { makeBlocks } from './blocks.js';
import { type ContainerCase, type ContainerInput, makeContainerCase, orientationsOf } from './container-case.js';
import { FreeSpaces } from './free-spaces.js';
import { Given } from './given.js';
import { Packing } from './packing.js';

type Cuboid = readonly [number, number, number, number, number, number];

function made(input: ContainerInput): ContainerCase {
  const read = makeContainerCase(input);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const extent = [40, 32, 24] as const;
const edge = fc.integer({ min: 4, max: 19 });
const few = (support: 'full' | undefined) =>
  fc
    .array(fc.record({ a: edge, b: edge, c: edge, up: fc.boolean(), count: fc.integer({ min: 1, max: 4 }) }), {
      minLength: 1,
      maxLength: 4,
    })
    .map((kinds) =>
      made({
        length: extent[0],
        width: extent[1],
        height: extent[2],
        boxes: kinds.map(({ a, b, c, up, count }) => ({ edges: [a, b, c], mayStand: [up, false, true], count })),
        ...(support ? { support } : {}),
      }),
    );

const givenOf = (problem: ContainerCase, leastFill = 1) =>
  new Given(
    problem,
    makeBlocks(problem, leastFill, () => false),
  );

const cuboids = (list: Int32Array, count: number): Cuboid[] =>
  Array.from({ length: count }, (_, index) => [...list.subarray(6 * index, 6 * index + 6)] as unknown as Cuboid);
const meets = (a: Cuboid, b: Cuboid) => [0, 1, 2].every((axis) => a[axis]! < b[axis + 3]! && b[axis]! < a[axis + 3]!);
const holds = (a: Cuboid, b: Cuboid) => [0, 1, 2].every((axis) => a[axis]! <= b[axis]! && a[axis + 3]! >= b[axis + 3]!);
const sorted = (list: readonly Cuboid[]) => list.map((each) => each.join(' ')).sort();

/** Every free cuboid within `within` that cannot grow, found by trying all corners; with `floor` only those that begin there. */
function maximalFree(placed: readonly Cuboid[], within: Cuboid, floor?: number): Cuboid[] {
  const ends = [0, 1, 2].map((axis) =>
    [...new Set([within[axis]!, within[axis + 3]!, ...placed.flatMap((each) => [each[axis]!, each[axis + 3]!])])]
      .filter((at) => at >= within[axis]! && at <= within[axis + 3]!)
      .sort((a, b) => a - b),
  );
  const pairs = (axis: number) => ends[axis]!.flatMap((from) => ends[axis]!.filter((to) => to > from).map((to) => [from, to] as const));
  const isFree = (each: Cuboid) => holds(within, each) && !placed.some((other) => meets(each, other));
  const found: Cuboid[] = [];
  for (const [x, X] of pairs(0))
    for (const [y, Y] of pairs(1))
      for (const [z, Z] of pairs(2)) {
        const each: Cuboid = [x, y, z, X, Y, Z];
        if ((floor !== undefined && z !== floor) || !isFree(each)) continue;
        const grown = each.flatMap((at, side) => {
          if (floor !== undefined && side === 2) return [];
          const axis = side % 3;
          const next = side < 3 ? ends[axis]!.filter((end) => end < at).at(-1) : ends[axis]!.find((end) => end > at);
          return next === undefined ? [] : [each.map((own, index) => (index === side ? next : own)) as unknown as Cuboid];
        });
        if (!grown.some(isFree)) found.push(each);
      }
  return found;
}

/** What a space has to have: as much along each axis as some box left needs at the least, and room for a box of some kind. */
function isOfUse({ problem }: Given, { left }: Packing, [x, y, z, X, Y, Z]: Cuboid): boolean {
  const size = [X - x, Y - y, Z - z];
  const of = (kinds: ContainerCase['boxes']) => kinds.flatMap((box) => [...orientationsOf(box)]);
  const remaining = of(problem.boxes.filter((_, kind) => left[kind]! > 0));
  return (
    [0, 1, 2].every((axis) => remaining.some((way) => way[axis]! <= size[axis]!)) &&
    of(problem.boxes).some((way) => way.every((own, axis) => own <= size[axis]!))
  );
}

/** Places blocks as `pick` says until nothing goes on; `check` is asked after each. */
function fill(given: Given, picks: readonly number[], check: (packing: Packing) => void): Packing {
  const packing = new Packing(given);
  const free = new FreeSpaces(given);
  for (const pick of picks) {
    const options = cuboids(packing.spaces, packing.spaceCount).flatMap((space, index) =>
      Array.from({ length: given.blocks.count }, (_, block) => block)
        .filter(
          (block) =>
            packing.buildable[block] === 1 &&
            [0, 1, 2].every((axis) => given.blocks.size[axis as 0][block]! <= space[axis + 3]! - space[axis]!),
        )
        .map((block) => [index, block] as const),
    );
    if (options.length === 0) break;
    const [space, block] = options[pick % options.length]!;
    packing.place(space, block, free);
    check(packing);
  }
  return packing;
}

const picks = (most: number) => fc.array(fc.nat(), { minLength: 1, maxLength: most });

describe('a partly filled container', () => {
  it('knows every free cuboid that cannot grow and is of use: the same as trying all corners', () => {
    fc.assert(
      fc.property(few(undefined), picks(5), (problem, wanted) => {
        const given = givenOf(problem);
        fill(given, wanted, (packing) => {
          const placed = cuboids(packing.placed, packing.placedCount);
          const free = maximalFree(placed, [0, 0, 0, ...extent]).filter((each) => isOfUse(given, packing, each));
          expect(sorted(cuboids(packing.spaces, packing.spaceCount))).toEqual(sorted(free));
        });
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  it('under full support knows those that stand on the floor or within one top', () => {
    fc.assert(
      fc.property(few('full'), picks(5), fc.constantFrom(1, 0.8), (problem, wanted, leastFill) => {
        const given = givenOf(problem, leastFill);
        fill(given, wanted, (packing) => {
          const placed = cuboids(packing.placed, packing.placedCount);
          const tops = placed.map(([x, y, , , , Z], index): Cuboid => {
            const block = packing.placedBlock[index]!;
            return [x, y, Z, x + given.blocks.top[0][block]!, y + given.blocks.top[1][block]!, extent[2]];
          });
          const free = [[0, 0, 0, ...extent] as Cuboid, ...tops]
            .filter((each) => each[2] < extent[2])
            .flatMap((each) => maximalFree(placed, each, each[2]))
            .filter((each) => isOfUse(given, packing, each));
          expect(sorted(cuboids(packing.spaces, packing.spaceCount))).toEqual(sorted(free));
        });
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  it('keeps count of boxes, blocks that can still be built, least extents and volume', () => {
    const manyKinds = fc
      .array(fc.record({ a: edge, b: edge, c: edge, count: fc.integer({ min: 0, max: 3 }) }), { minLength: 33, maxLength: 36 })
      .map((kinds) =>
        made({
          length: extent[0],
          width: extent[1],
          height: extent[2],
          boxes: kinds.map(({ a, b, c, count }) => ({ edges: [a, b, c], mayStand: [false, false, true], count })),
        }),
      );
    fc.assert(
      fc.property(fc.oneof(few(undefined), manyKinds), picks(8), (problem, wanted) => {
        const given = givenOf(problem);
        const { blocks } = given;
        const takes = (block: number) =>
          Array.from({ length: blocks.first[block + 1]! - blocks.first[block]! }, (_, at) => blocks.first[block]! + at).map(
            (at) => [blocks.kind[at]!, blocks.quantity[at]!] as const,
          );
        const check = (packing: Packing) => {
          const built = [...packing.placedBlock.subarray(0, packing.placedCount)];
          const left = problem.boxes.map((box) => box.count);
          for (const block of built) for (const [kind, quantity] of takes(block)) left[kind]! -= quantity;
          expect([...packing.left]).toEqual(left);
          const buildable = Array.from({ length: blocks.count }, (_, block) =>
            Number(takes(block).every(([kind, quantity]) => left[kind]! >= quantity)),
          );
          expect([...packing.buildable]).toEqual(buildable);
          expect(left.map((_, kind) => (packing.kindsLeft[kind >> 5]! >>> (kind & 31)) & 1)).toEqual(left.map((each) => Number(each > 0)));
          const ways = problem.boxes.flatMap((box, kind) => (left[kind]! > 0 ? [...orientationsOf(box)] : []));
          if (ways.length > 0) expect([...packing.least]).toEqual([0, 1, 2].map((axis) => Math.min(...ways.map((way) => way[axis]!))));
          const volume = cuboids(packing.placed, packing.placedCount).reduce(
            (sum, [x, y, z, X, Y, Z]) => sum + (X - x) * (Y - y) * (Z - z),
            0,
          );
          expect(packing.volume).toBe(volume);
        };
        check(new Packing(given));
        fill(given, wanted, check);
      }),
      { numRuns: 40, seed: 5 },
    );
  });

  it.each([undefined, 'full'] as const)('fills the space nearest to a corner next, into that corner, support %s', (support) => {
    fc.assert(
      fc.property(few(support), picks(6), (problem, wanted) => {
        const given = givenOf(problem);
        fill(given, wanted, (packing) => {
          const near = (axis: number, each: Cuboid) =>
            axis === 2 && support === 'full' ? each[2] : Math.min(each[axis]!, extent[axis]! - each[axis + 3]!);
          const spaces = cuboids(packing.spaces, packing.spaceCount);
          const keys = spaces.map((each) => near(0, each) + near(1, each) + near(2, each));
          const volumes = spaces.map(([x, y, z, X, Y, Z]) => (X - x) * (Y - y) * (Z - z));
          const next = packing.nextSpace();
          if (spaces.length === 0) return expect(next).toBe(-1);
          const least = Math.min(...keys);
          const largest = Math.max(...volumes.filter((_, index) => keys[index] === least));
          expect([keys[next], volumes[next]]).toEqual([least, largest]);
          const block = given.blocks.count - 1;
          for (const axis of [0, 1, 2] as const) {
            const [from, to] = [spaces[next]![axis], spaces[next]![axis + 3]!];
            const isLow = from <= extent[axis] - to || (axis === 2 && support === 'full');
            expect(packing.corner(next, block, axis)).toBe(isLow ? from : to - given.blocks.size[axis][block]!);
          }
        });
      }),
      { numRuns: 40, seed: 7 },
    );
  });

  it('has the same key for the same blocks in the same places in any order, and another for any other', () => {
    const given = givenOf(
      made({ length: 60, width: 60, height: 60, boxes: [{ edges: [10, 10, 10], mayStand: [false, false, true], count: 100 }] }),
    );
    const packing = new Packing(given);
    const keyAt = (base: number, x: number, y: number, z: number) => {
      packing.spaces.set([x, y, z, x + 10, y + 10, z + 10]);
      packing.key = base;
      return packing.keyWith(0, 0);
    };
    const corners = [0, 10, 20, 30, 40, 50];
    const places = corners.flatMap((x) => corners.flatMap((y) => corners.map((z) => [x, y, z] as const)));
    const keys = new Set<number>();
    for (const a of places)
      for (const b of places.slice(0, 100)) {
        const [one, other] = [keyAt(keyAt(0, ...a), ...b), keyAt(keyAt(0, ...b), ...a)];
        if (one !== other || !Number.isInteger(one) || one < 0 || one >= 2 ** 48) throw new Error(`keys ${one} and ${other}`);
        keys.add(one);
      }
    // Pairs of places, order aside; one place twice among them.
    const pairs = new Set(places.flatMap((a, i) => places.slice(0, 100).map((_, j) => [Math.min(i, j), Math.max(i, j)].join())));
    expect(keys.size).toBe(pairs.size);
    const key = keyAt(0, 20, 30, 40);
    expect(packing.place(0, 0, new FreeSpaces(given)).key).toBe(key);
  });

  it('becomes another, and is its own from then on', () => {
    const problem = made({ length: 40, width: 40, height: 40, boxes: [{ edges: [4, 5, 6], mayStand: [true, true, true], count: 300 }] });
    const given = givenOf(problem);
    const free = new FreeSpaces(given);
    const small = Array.from({ length: given.blocks.count }, (_, block) => block).filter((block) => given.blocks.pieces[block] === 1);
    const packing = new Packing(given);
    const state = (each: Packing) => ({
      left: [...each.left],
      buildable: [...each.buildable],
      kindsLeft: [...each.kindsLeft],
      least: [...each.least],
      spaces: cuboids(each.spaces, each.spaceCount),
      placements: each.placements(),
      placed: cuboids(each.placed, each.placedCount),
      numbers: [each.volume, each.key],
    });
    const before: ReturnType<typeof state>[] = [];
    const copies: Packing[] = [];
    for (let step = 0; step < 150; step++) {
      if (step % 10 === 0) {
        const copy = new Packing(given).become(packing);
        expect(state(copy)).toEqual(state(packing));
        before.push(state(packing));
        copies.push(copy);
      }
      const space = (step * 7) % packing.spaceCount;
      const [x, y, z, X, Y, Z] = cuboids(packing.spaces, packing.spaceCount)[space]!;
      const { size } = given.blocks;
      const block = small.filter((each) => size[0][each]! <= X - x && size[1][each]! <= Y - y && size[2][each]! <= Z - z)[step % 2];
      if (block === undefined) packing.dropSpace(space);
      else packing.place(space, block, free);
      if (step % 10 !== 5) continue;
      const placed = cuboids(packing.placed, packing.placedCount);
      const spaces = cuboids(packing.spaces, packing.spaceCount);
      // However many there are: free, inside, none within another, none twice.
      expect(spaces.some((each) => placed.some((other) => meets(each, other)))).toBe(false);
      expect(spaces.every((each) => holds([0, 0, 0, 40, 40, 40], each))).toBe(true);
      expect(spaces.some((each, index) => spaces.some((other, at) => at !== index && holds(other, each)))).toBe(false);
    }
    expect(packing.placedCount).toBeGreaterThan(64);
    expect(copies.map(state)).toEqual(before);
    // One that holds more becomes one that holds less.
    expect(state(copies.at(-1)!.become(copies[2]!))).toEqual(before[2]);
  });
});
