import type { PinnedStep, SafeMoves } from './progress.js';

/** A plan without a search: where no safe move is left, boxes come off the stack that needs the fewest of them set aside. */
export function plainPlan(safe: SafeMoves): PinnedStep[] {
  const steps: PinnedStep[] = [];
  const progress = safe.begin();
  safe.closeAll(progress, safe.isAside, steps);
  while (!safe.isDone(progress)) {
    let [best, fewest, end] = [-1, Infinity, 0];
    for (let stack = 0; stack < safe.off.length; stack++) {
      const dug = safe.nextEvent(stack, progress);
      if (dug && dug.aside < fewest) [best, fewest, end] = [stack, dug.aside, dug.until];
    }
    for (; progress.lifted[best]! < end; progress.lifted[best]!++) steps.push({ stack: best, load: -1, place: -1 });
    safe.closeAfter(best, progress, safe.isAside, steps);
  }
  return steps;
}
