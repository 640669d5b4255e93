import { BlockIndex } from './block-index.js';
import type { Blocks } from './blocks.js';
import { type ContainerCase, orientationsOf } from './container-case.js';
import { type Reach, reachOf } from './reach.js';
import { Room } from './room.js';

const piecesPower = -0.2;

/** What stays the same through a search. */
export class Given {
  readonly extent: readonly [number, number, number];
  readonly reach: readonly [Reach, Reach, Reach];
  readonly hasFullSupport: boolean;
  /** No packing has more volume: that of the container, or of all boxes. */
  readonly mostVolume: number;
  /** Volume times pieces to the power -0.2, by block. */
  readonly worth: Float64Array;
  /** By axis and block: one of the two faces across the axis as part of the block's surface. */
  readonly face: readonly [Float64Array, Float64Array, Float64Array];
  readonly index: BlockIndex;
  /** By kind and axis: the least extent that it can have. */
  readonly leastExtent: Int32Array;
  readonly room: Room;
  /** Words of a set of kinds, 32 a word. */
  readonly words: number;
  /** Blocks that take exactly q of a kind: `takers[takersFrom[kindFrom[kind] + q]] ..`, up to where those that take q + 1 begin. */
  readonly takers: Int32Array;
  readonly takersFrom: Int32Array;
  readonly kindFrom: Int32Array;

  constructor(
    readonly problem: ContainerCase,
    readonly blocks: Blocks,
  ) {
    this.extent = [problem.length, problem.width, problem.height];
    const all = problem.boxes.reduce((sum, { edges, count }) => sum + edges[0] * edges[1] * edges[2] * count, 0);
    this.mostVolume = Math.min(all, problem.length * problem.width * problem.height);
    this.hasFullSupport = problem.support === 'full';
    this.reach = reachOf(problem);
    this.words = this.reach[0].words;
    this.worth = Float64Array.from({ length: blocks.count }, (_, block) => blocks.volume[block]! * blocks.pieces[block]! ** piecesPower);
    const [x, y, z] = blocks.size;
    const part = (face: (block: number) => number) =>
      Float64Array.from({ length: blocks.count }, (_, b) => face(b) / (2 * (x[b]! * y[b]! + x[b]! * z[b]! + y[b]! * z[b]!)));
    this.face = [part((b) => y[b]! * z[b]!), part((b) => x[b]! * z[b]!), part((b) => x[b]! * y[b]!)];
    this.index = new BlockIndex(blocks, this.worth, this.extent);
    this.leastExtent = new Int32Array(problem.boxes.length * 3);
    problem.boxes.forEach((box, kind) => {
      for (let axis = 0; axis < 3; axis++) this.leastExtent[kind * 3 + axis] = Math.min(...orientationsOf(box).map((each) => each[axis]!));
    });
    this.room = new Room(problem);
    this.kindFrom = new Int32Array(problem.boxes.length + 1);
    problem.boxes.forEach((box, kind) => (this.kindFrom[kind + 1] = this.kindFrom[kind]! + box.count + 1));
    const entries = blocks.first[blocks.count]!;
    const counts = new Int32Array(this.kindFrom[problem.boxes.length]! + 1);
    const slot = (each: number) => this.kindFrom[blocks.kind[each]!]! + blocks.quantity[each]!;
    for (let each = 0; each < entries; each++) counts[slot(each) + 1]!++;
    for (let each = 1; each < counts.length; each++) counts[each]! += counts[each - 1]!;
    this.takersFrom = counts;
    this.takers = new Int32Array(entries);
    const next = counts.slice();
    for (let block = 0; block < blocks.count; block++)
      for (let each = blocks.first[block]!; each < blocks.first[block + 1]!; each++) this.takers[next[slot(each)]!++] = block;
  }
}
