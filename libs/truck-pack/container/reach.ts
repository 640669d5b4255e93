import { type ContainerCase, orientationsOf } from './container-case.js';

/** Along one axis: for every extent the largest sum of box edges within it, and which kinds can end that sum (bit sets of 32). */
export interface Reach {
  /** m[t]: largest reachable sum no greater than t. */
  readonly longest: Int32Array;
  /** Words a set. */
  readonly words: number;
  /** enders[t * words ...]: kinds that can end the sum t; only of reachable t. */
  readonly enders: Int32Array;
}

/** Reach along x, y and z, counts bounded. */
export function reachOf(problem: ContainerCase): readonly [Reach, Reach, Reach] {
  const most = [problem.length, problem.width, problem.height];
  return most.map((extent, axis) => {
    const words = Math.ceil(problem.boxes.length / 32);
    const reachable = new Uint8Array(extent + 1);
    const enders = new Int32Array((extent + 1) * words);
    reachable[0] = 1;
    problem.boxes.forEach((box, kind) => {
      const edges = [...new Set(orientationsOf(box).map((each) => each[axis]!))];
      // Sums that use this kind at most `count` times, any of its edges each time.
      const uses = new Int32Array(extent + 1).fill(-1);
      for (let t = 0; t <= extent; t++) {
        if (reachable[t] && uses[t] === -1) uses[t] = 0;
        if (uses[t] === -1 || uses[t]! >= box.count) continue;
        for (const edge of edges) {
          const to = t + edge;
          if (to > extent) continue;
          if (uses[to] === -1 && !reachable[to]) uses[to] = uses[t]! + 1;
          const word = to * words + (kind >> 5);
          enders[word] = enders[word]! | (1 << (kind & 31));
        }
      }
      for (let t = 0; t <= extent; t++) if (uses[t]! >= 0) reachable[t] = 1;
    });
    const longest = new Int32Array(extent + 1);
    for (let t = 1; t <= extent; t++) longest[t] = reachable[t] ? t : longest[t - 1]!;
    return { longest, words, enders };
  }) as unknown as readonly [Reach, Reach, Reach];
}
