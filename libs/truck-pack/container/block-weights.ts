import type { ContainerCase } from './container-case.js';

const slackKg = 1e-9;

/**
 * What a block weighs, how hard it presses and how much pressure its top takes. Under full support a box passes on what it carries evenly over its base, so
 * the pressure below it is nowhere more than its own and the most that presses on it: the most of each, in kilograms per square unit, says of a
 * block all that has to be known. That is on the safe side: a box that carries little on half of its top might carry more.
 */
export class BlockWeights {
  readonly massKg: Float64Array;
  readonly presses: Float64Array;
  /** The most pressure that its top takes. */
  readonly bears: Float64Array;
  /** 1: it holds a box that stands on the floor only. */
  readonly isFloorOnly: Uint8Array;

  constructor(
    private readonly problem: ContainerCase,
    most: number,
  ) {
    this.massKg = new Float64Array(most);
    this.presses = new Float64Array(most);
    this.bears = new Float64Array(most);
    this.isFloorOnly = new Uint8Array(most);
  }

  ofBox(block: number, kind: number, base: number): void {
    const { massKg = 0, mostOnTopKg = Infinity, isFloorOnly = false } = this.problem.boxes[kind]!;
    this.massKg[block] = massKg;
    this.presses[block] = massKg / base;
    this.bears[block] = mostOnTopKg / base;
    this.isFloorOnly[block] = Number(isFloorOnly);
  }

  /** Block `q` behind, beside or (axis 2) on block `p`; false where that may not be. */
  ofPair(block: number, p: number, q: number, axis: number): boolean {
    const { massKg, presses, bears, isFloorOnly, problem } = this;
    massKg[block] = massKg[p]! + massKg[q]!;
    if (massKg[block] > (problem.limits?.payloadKg ?? Infinity) + slackKg) return false;
    if (axis !== 2) {
      presses[block] = Math.max(presses[p]!, presses[q]!);
      bears[block] = Math.min(bears[p]!, bears[q]!);
      isFloorOnly[block] = isFloorOnly[p]! | isFloorOnly[q]!;
      return true;
    }
    if (isFloorOnly[q] === 1 || presses[q]! > bears[p]!) return false;
    presses[block] = presses[p]! + presses[q]!;
    bears[block] = Math.min(bears[q]!, bears[p]! - presses[q]!);
    isFloorOnly[block] = isFloorOnly[p]!;
    return true;
  }

  areAlike(a: number, b: number): boolean {
    return this.presses[a] === this.presses[b] && this.bears[a] === this.bears[b] && this.isFloorOnly[a] === this.isFloorOnly[b];
  }
}
