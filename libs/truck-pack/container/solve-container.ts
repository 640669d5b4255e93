import { BeamSearch } from './beam-search.js';
import { type Blocks, makeBlocks } from './blocks.js';
import type { ContainerAnswer, ContainerCase, ContainerPlacement } from './container-case.js';
import { Given } from './given.js';
import type { Packing } from './packing.js';
import { settled } from './settle.js';
import { verifyContainer } from './verify-container.js';

export interface ContainerLimits {
  /** Greedy completions at most; equal limits give the equal packing unless time runs out first. */
  readonly workLimit: number;
  readonly timeLimitSeconds: number;
  /** Milliseconds of any clock that does not go back. */
  readonly now: () => number;
}

/** Least part of a block that is box: all of it where few kinds are many, a little less where many kinds are few. */
const leastFillFor = (kinds: number): number => (kinds < 30 ? 1 : 0.98);

/**
 * Fills a container by beam search over blocks: each state's best blocks in its best space, each child judged by completing it greedily; the beam
 * grows by the square root of two from pass to pass (Araya, Guerrero and Nunez, Computers & OR 82, 2017).
 */
export function solveContainer(problem: ContainerCase, limits: ContainerLimits): ContainerAnswer {
  const deadline = limits.now() + limits.timeLimitSeconds * 1000;
  const isLate = () => limits.now() >= deadline;
  const given = new Given(problem, makeBlocks(problem, leastFillFor(problem.boxes.length), isLate));
  const boxesIn = (packing: Packing) => packing.placements().flatMap((each) => boxesOf(given.blocks, each));
  const settle = (packing: Packing, above: number) => settled(problem, boxesIn(packing), above);
  const search = new BeamSearch(given, isLate, limits.workLimit, problem.limits ? settle : undefined);
  for (let effort = 1; !search.isOver(); effort *= Math.SQRT2) if (!search.pass(effort)) break;
  const capacity = problem.length * problem.width * problem.height;
  const bound = given.mostVolume / capacity;
  const { placements, volume } = problem.limits ? search.settled : { placements: boxesIn(search.best), volume: search.best.volume };
  const utilisation = volume / capacity;
  const answer: ContainerAnswer = {
    placements,
    utilisation,
    bound,
    completions: search.completions,
    // Where the beam has looked at all it can, that is no proof: blocks are only some of all that could be built.
    stoppedBy: utilisation >= bound ? 'proof' : search.isCut ? 'clock' : 'work',
  };
  const mismatch = verifyContainer(problem, answer);
  return mismatch.length === 0 ? answer : { ...answer, mismatch };
}

/** The boxes of a placed block, taken apart as it was built. */
function boxesOf(blocks: Blocks, { block, x, y, z }: { block: number; x: number; y: number; z: number }): ContainerPlacement[] {
  const axis = blocks.axis[block]!;
  const [a, b] = [blocks.a[block]!, blocks.b[block]!];
  if (axis < 0) return [{ box: a, x, y, z, dx: blocks.size[0][block]!, dy: blocks.size[1][block]!, dz: blocks.size[2][block]! }];
  const step = blocks.size[axis as 0 | 1 | 2][a]!;
  return [
    ...boxesOf(blocks, { block: a, x, y, z }),
    ...boxesOf(blocks, { block: b, x: x + (axis === 0 ? step : 0), y: y + (axis === 1 ? step : 0), z: z + (axis === 2 ? step : 0) }),
  ];
}
