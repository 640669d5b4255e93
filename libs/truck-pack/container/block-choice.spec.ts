import fc from 'fast-check';
import { seededRandom } from '#kernel';
import { BlockChoice } from './block-choice.js';
import { makeBlocks } from './blocks.js';
import { type ContainerCase, type ContainerInput, makeContainerCase } from './container-case.js';
import { FreeSpaces } from './free-spaces.js';
import { Given } from './given.js';
import { Packing } from './packing.js';

function made(input: ContainerInput): ContainerCase {
  const read = makeContainerCase(input);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const edge = fc.integer({ min: 20, max: 90 });
const problems = fc
  .array(fc.record({ a: edge, b: edge, c: edge, count: fc.integer({ min: 1, max: 6 }) }), { minLength: 2, maxLength: 5 })
  .map(
    (kinds): ContainerCase =>
      made({
        length: 250,
        width: 180,
        height: 160,
        boxes: kinds.map(({ a, b, c, count }) => ({ edges: [a, b, c], mayStand: [false, true, true], count })),
      }),
  );

/** More kinds than a word of a set holds, two of each at the most. */
const manyKinds = fc
  .array(fc.record({ a: edge, b: edge, c: edge, count: fc.integer({ min: 1, max: 2 }) }), { minLength: 34, maxLength: 36 })
  .map((kinds) =>
    made({
      length: 150,
      width: 120,
      height: 100,
      boxes: kinds.map(({ a, b, c, count }) => ({ edges: [a, b, c], mayStand: [false, false, true], count })),
    }),
  );

/** The value as it is defined, for one block in one space; nothing left out, nothing bounded. */
function valueOf(given: Given, packing: Packing, space: number, block: number): number {
  const { blocks, problem } = given;
  const s = [...packing.spaces.subarray(6 * space, 6 * space + 6)];
  const size = [0, 1, 2].map((axis) => blocks.size[axis as 0 | 1 | 2][block]!);
  const left = [...packing.left];
  for (let at = blocks.first[block]!; at < blocks.first[block + 1]!; at++) left[blocks.kind[at]!]! -= blocks.quantity[at]!;
  if (left.some((count) => count < 0) || size.some((extent, axis) => extent > s[axis + 3]! - s[axis]!)) return -1;
  let kept = 1;
  for (const axis of [0, 1, 2] as const) {
    const { longest, enders, words } = given.reach[axis];
    const all = s[axis + 3]! - s[axis]!;
    const isStillThere = (t: number) =>
      left.some((count, kind) => count > 0 && ((enders[t * words + (kind >> 5)]! >>> (kind & 31)) & 1) !== 0);
    let rest = all - size[axis]!;
    while (rest > 0 && !(longest[rest] === rest && isStillThere(rest))) rest--;
    kept *= (size[axis]! + rest) / all;
  }
  const extent = [problem.length, problem.width, problem.height];
  const low = size.map((own, axis) => (s[axis]! <= extent[axis]! - s[axis + 3]! ? s[axis]! : s[axis + 3]! - own));
  let touching = 0;
  for (const axis of [0, 1, 2]) {
    const [u, v] = [0, 1, 2].filter((each) => each !== axis) as [number, number];
    const gap = 0.04 * size[axis]!;
    const face = size[u]! * size[v]!;
    for (const isHigh of [false, true]) {
      const side = isHigh ? low[axis]! + size[axis]! : low[axis]!;
      let area = (isHigh ? extent[axis]! - side : side) <= gap ? face : 0;
      for (let p = 0; p < packing.placedCount; p++) {
        const other = [...packing.placed.subarray(6 * p, 6 * p + 6)];
        const overlap = (each: number) => Math.min(low[each]! + size[each]!, other[each + 3]!) - Math.max(low[each]!, other[each]!);
        const between = isHigh ? other[axis]! - side : side - other[axis + 3]!;
        if (between >= 0 && between <= gap && overlap(u) > 0 && overlap(v) > 0) area += overlap(u) * overlap(v);
      }
      touching += Math.min(face, area);
    }
  }
  const surface = 2 * (size[0]! * size[1]! + size[0]! * size[2]! + size[1]! * size[2]!);
  return blocks.volume[block]! * blocks.pieces[block]! ** -0.2 * kept * (touching / surface) ** 4;
}

it('the blocks chosen for a space are the best by the value as it is defined, whatever the bounds left out', () => {
  fc.assert(
    fc.property(fc.oneof(problems, manyKinds), (problem) => {
      const given = new Given(
        problem,
        makeBlocks(problem, 1, () => false),
      );
      const choice = new BlockChoice(given);
      const packing = new Packing(given);
      const free = new FreeSpaces(given);
      for (let step = 0; step < 12; step++) {
        const space = packing.nextSpace();
        if (space < 0) break;
        const values = Array.from({ length: given.blocks.count }, (_, block) => valueOf(given, packing, space, block));
        const best = values.filter((value) => value > 0).sort((a, b) => b - a);
        let count = 0;
        for (const width of [200, 3]) {
          count = choice.choose(packing, space, width);
          expect(count).toBe(Math.min(width, best.length));
          const away = best.slice(0, count).flatMap((value, index) => {
            const own = values[choice.best[index]!]!;
            return Math.abs(own / value - 1) < 1e-9 && Math.abs(choice.values[index]! / value - 1) < 1e-9
              ? []
              : [[own, choice.values[index], value]];
          });
          expect(away).toEqual([]);
          expect(new Set(choice.best.subarray(0, count)).size).toBe(count);
        }
        if (count > 0) packing.place(space, choice.best[0]!, free);
        else packing.dropSpace(space);
      }
    }),
    { numRuns: 12 },
  );
});

it('the blocks chosen are found without working out most of the values', () => {
  const random = seededRandom(4);
  const side = () => 20 + Math.floor(60 * random());
  const problem = made({
    length: 250,
    width: 180,
    height: 160,
    boxes: Array.from({ length: 20 }, () => ({ edges: [side(), side(), side()], mayStand: [true, true, true], count: 3 })),
  });
  const given = new Given(
    problem,
    makeBlocks(problem, 1, () => false),
  );
  const choice = new BlockChoice(given);
  const packing = new Packing(given);
  const free = new FreeSpaces(given);
  let spaces = 0;
  for (let space = packing.nextSpace(); space >= 0; space = packing.nextSpace()) {
    spaces++;
    if (choice.choose(packing, space, 4) > 0) packing.place(space, choice.best[0]!, free);
    else packing.dropSpace(space);
  }
  // All 912 blocks for each of the 21 spaces would be 19,152.
  expect([given.blocks.count, spaces]).toEqual([912, 21]);
  expect(choice.looked).toBeLessThanOrEqual(1237);
  expect(choice.valued).toBeLessThanOrEqual(147);
});
