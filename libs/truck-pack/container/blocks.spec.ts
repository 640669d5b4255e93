import fc from 'fast-check';
import { seededRandom } from '#kernel';
import { type Blocks, makeBlocks } from './blocks.js';
import { type ContainerCase, type ContainerInput, makeContainerCase, orientationsOf } from './container-case.js';
import { verifyContainer } from './verify-container.js';

function made(input: ContainerInput): ContainerCase {
  const read = makeContainerCase(input);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

const never = () => false;
type Box = ContainerInput['boxes'][number];
const box = (edges: Box['edges'], count: number, mayStand: Box['mayStand'] = [false, false, true]): Box => ({ edges, mayStand, count });

interface Block {
  readonly size: readonly number[];
  readonly top: readonly number[];
  /** Boxes of each kind. */
  readonly used: readonly number[];
}

/** Every block that joining two smaller ones can make, by trying all pairs along all axes until nothing new comes. */
function everyBlock({ length, width, height, boxes, support }: ContainerCase, leastFill: number): string[] {
  const most = [length, width, height];
  const volumes = boxes.map(({ edges }) => edges[0] * edges[1] * edges[2]);
  const found = new Map<string, Block>();
  const note = (block: Block): void => {
    if (block.size.every((own, axis) => own <= most[axis]!) && block.used.every((count, kind) => count <= boxes[kind]!.count))
      found.set(JSON.stringify(block), block);
  };
  boxes.forEach((each, kind) => {
    for (const [x, y, z] of orientationsOf(each)) note({ size: [x, y, z], top: [x, y], used: boxes.map((_, at) => Number(at === kind)) });
  });
  for (let known = 0; known < found.size; ) {
    known = found.size;
    const all = [...found.values()];
    for (const p of all)
      for (const q of all)
        for (const axis of [0, 1, 2]) {
          const size = p.size.map((own, at) => (at === axis ? own + q.size[at]! : Math.max(own, q.size[at]!)));
          const used = p.used.map((own, kind) => own + q.used[kind]!);
          const filled = used.reduce((sum, count, kind) => sum + count * volumes[kind]!, 0);
          if (filled < leastFill * size[0]! * size[1]! * size[2]! - 1e-9) continue;
          let top = [size[0]!, size[1]!];
          if (support === 'full') {
            const isWhole = (each: Block) => each.top[axis] === each.size[axis];
            if (axis === 2 ? q.size[0]! > p.top[0]! || q.size[1]! > p.top[1]! : p.size[2] !== q.size[2] || !isWhole(p) || !isWhole(q))
              continue;
            top = axis === 2 ? [...q.top] : top.map((own, at) => (at === axis ? own : Math.min(p.top[at]!, q.top[at]!)));
          }
          note({ size, top, used });
        }
  }
  return [...found.keys()].sort();
}

const numbersOf = (blocks: Blocks): number[] => Array.from({ length: blocks.count }, (_, block) => block);

function usedBy(blocks: Blocks, block: number, kinds: number): number[] {
  const used = new Array<number>(kinds).fill(0);
  for (let at = blocks.first[block]!; at < blocks.first[block + 1]!; at++) used[blocks.kind[at]!]! += blocks.quantity[at]!;
  return used;
}

const written = (blocks: Blocks, kinds: number): string[] =>
  numbersOf(blocks)
    .map((block) =>
      JSON.stringify({
        size: [0, 1, 2].map((axis) => blocks.size[axis as 0][block]!),
        top: [0, 1].map((axis) => blocks.top[axis as 0][block]!),
        used: usedBy(blocks, block, kinds),
      }),
    )
    .sort();

/** Boxes of a block, taken apart as it says it was built. */
function boxesOf(blocks: Blocks, block: number, from: readonly number[]): { kind: number; at: readonly number[]; size: number[] }[] {
  const axis = blocks.axis[block]!;
  const size = (which: number) => [0, 1, 2].map((each) => blocks.size[each as 0][which]!);
  if (axis < 0) return [{ kind: blocks.a[block]!, at: from, size: size(block) }];
  const first = blocks.a[block]!;
  return [
    ...boxesOf(blocks, first, from),
    ...boxesOf(
      blocks,
      blocks.b[block]!,
      from.map((own, each) => (each === axis ? own + size(first)[each]! : own)),
    ),
  ];
}

const side = fc.integer({ min: 2, max: 6 });
const few = fc
  .record({
    kinds: fc.array(fc.record({ a: side, b: side, c: side, up: fc.boolean(), count: fc.integer({ min: 0, max: 3 }) }), {
      minLength: 1,
      maxLength: 3,
    }),
    support: fc.constantFrom(undefined, 'full' as const),
  })
  .map(({ kinds, support }) =>
    made({
      length: 12,
      width: 9,
      height: 7,
      boxes: kinds.map(({ a, b, c, up, count }) => box([a, b, c], count, [up, false, true])),
      ...(support ? { support } : {}),
    }),
  );

describe('blocks', () => {
  it('are all that can be built of solid ones, each once, as trying all pairs finds them', () => {
    fc.assert(
      fc.property(few, (problem) => {
        expect(written(makeBlocks(problem, 1, never), problem.boxes.length).join('\n')).toBe(everyBlock(problem, 1).join('\n'));
      }),
      { numRuns: 60, seed: 2 },
    );
  });

  it('nearly solid, are all that can be built with that much of them box', () => {
    fc.assert(
      fc.property(few, fc.constantFrom(0.98, 0.9, 0.8), (problem, leastFill) => {
        const one = { ...problem, boxes: problem.boxes.map((each) => ({ ...each, count: Math.min(each.count, 2) })) };
        expect(written(makeBlocks(one, leastFill, never), one.boxes.length).join('\n')).toBe(everyBlock(one, leastFill).join('\n'));
      }),
      { numRuns: 60, seed: 2 },
    );
  });

  it('taken apart, are boxes that do not overlap, each as it may lie and, where that is wanted, carried', () => {
    fc.assert(
      fc.property(few, fc.constantFrom(1, 0.8), (problem, leastFill) => {
        const blocks = makeBlocks(problem, leastFill, never);
        for (const block of numbersOf(blocks)) {
          const boxes = boxesOf(blocks, block, [0, 0, 0]);
          const placements = boxes.map(({ kind, at, size }) => {
            const [[x, y, z], [dx, dy, dz]] = [at, size] as unknown as [[number, number, number], [number, number, number]];
            return { box: kind, x, y, z, dx, dy, dz };
          });
          const volume = placements.reduce((sum, { dx, dy, dz }) => sum + dx * dy * dz, 0);
          const size = [0, 1, 2].map((axis) => blocks.size[axis as 0][block]!) as [number, number, number];
          const around = { ...problem, length: size[0], width: size[1], height: size[2] };
          expect(verifyContainer(around, { placements, utilisation: volume / (size[0] * size[1] * size[2]), bound: 1 })).toEqual([]);
          expect([blocks.volume[block], blocks.pieces[block]]).toEqual([volume, boxes.length]);
        }
      }),
      { numRuns: 40, seed: 4 },
    );
  });

  it.each([
    [4, 1],
    [35, 0.98],
  ])('of %i kinds, %d solid, stop at ten thousand', (kinds, leastFill) => {
    const random = seededRandom(3);
    const edge = () => 4 + Math.floor(8 * random());
    const boxes = Array.from({ length: kinds }, () => box([edge(), edge(), edge()], 60, [true, true, true]));
    const blocks = makeBlocks(made({ length: 400, width: 300, height: 200, boxes }), leastFill, never);
    // One pair is joined along every axis, and upwards both ways.
    expect(blocks.count).toBeGreaterThanOrEqual(10_000);
    expect(blocks.count).toBeLessThan(10_004);
    const volumes = boxes.map(({ edges }) => edges[0] * edges[1] * edges[2]);
    for (const block of numbersOf(blocks)) {
      const filled = usedBy(blocks, block, kinds).reduce((sum, count, kind) => sum + count * volumes[kind]!, 0);
      if (filled !== blocks.volume[block]) throw new Error(`block ${block} says ${blocks.volume[block]}, its boxes fill ${filled}`);
    }
  });

  it('once it is late are the boxes alone', () => {
    const problem = made({ length: 100, width: 100, height: 100, boxes: [box([10, 20, 30], 9, [true, true, true])] });
    expect(makeBlocks(problem, 1, () => true).count).toBe(6);
  });
});
