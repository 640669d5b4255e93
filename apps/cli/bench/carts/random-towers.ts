import { seededRandom } from '#kernel';
import type { BlocksProblem } from '#cart-allocation';

/** Two states of a blocks world of so many blocks, each drawn evenly from all that there are (sets of lists; Slaney and Thiebaux 2001, section 2). */
export function randomTowers(blocks: number, seed: number): BlocksProblem {
  const random = seededRandom(seed * 7919 + blocks);
  const ways = waysUpTo(blocks);
  return { start: stateOf(blocks, ways, random), goal: stateOf(blocks, ways, random) };
}

/** States of n blocks over n!: the tower of one block takes k of them in k / n x ways(n - k) ways. */
function waysUpTo(most: number): number[] {
  const ways = [1];
  for (let n = 1; n <= most; n++)
    ways.push(Array.from({ length: n }, (_, index) => (index + 1) * ways[n - index - 1]!).reduce((a, b) => a + b) / n);
  return ways;
}

function stateOf(blocks: number, ways: readonly number[], random: () => number): string[][] {
  const left = Array.from({ length: blocks }, (_, index) => `b${index + 1}`);
  for (let at = left.length - 1; at > 0; at--) {
    const other = Math.floor(random() * (at + 1));
    [left[at], left[other]] = [left[other]!, left[at]!];
  }
  const towers: string[][] = [];
  while (left.length > 0) {
    let at = random() * ways[left.length]! * left.length;
    let height = 1;
    while (height < left.length && (at -= height * ways[left.length - height]!) >= 0) height++;
    towers.push(left.splice(0, height));
  }
  return towers;
}
