import { type WorkBudget, invariant } from '#kernel';
import type { FloorPlan, NumberedMove } from '../case/index.js';
import { beam, bestFirst } from './best-first.js';
import type { PinnedWork } from './pinned-work.js';
import type { PinnedStep } from './progress.js';
import { PinnedStates } from './states.js';
import { WorkShare } from './work-share.js';

export interface PinnedAnswer {
  /** With these carts no plan has fewer moves. */
  readonly bound: number;
  /** A plan below what was asked for; the shortest where it has `bound` moves. */
  readonly moves: readonly NumberedMove[] | undefined;
}

/** Part of its work after which the search for the shortest plan gives way to beams, the wider the later. */
const exactShare = 0.7;
const widths = [8, 32, 128];

/**
 * The shortest plan of fewer than `below` moves; where its share of the work ends first, the best that was found and how far below it plans can be.
 */
export function searchPinned(floor: FloorPlan, work: PinnedWork, below: number, budget: WorkBudget, share = 1): PinnedAnswer {
  const states = new PinnedStates(work);
  const limit = below - work.leastMoves;
  if (limit <= 0) return { bound: below, moves: undefined };
  const plain = states.plainSteps();
  const most = Math.min(limit, plain.length - work.leastMoves);
  const whole = new WorkShare(budget, share);
  let best = beam(states, 1, most, whole);
  const outcome = bestFirst(states, best?.aside ?? most, new WorkShare(budget, exactShare * share));
  best = outcome.best ?? best;
  for (const width of widths) {
    if ((best?.aside ?? most) <= outcome.bound) break;
    best = beam(states, width, best?.aside ?? most, whole) ?? best;
  }
  const steps = best ? states.stepsTo(best) : plain;
  invariant(!best || steps.length === work.leastMoves + best.aside, 'each box set aside is one move more');
  return { bound: work.leastMoves + outcome.bound, moves: steps.length < below ? movesOf(floor, work, steps) : undefined };
}

/** Steps as moves of boxes. */
function movesOf(floor: FloorPlan, work: PinnedWork, steps: readonly PinnedStep[]): NumberedMove[] {
  const stacks = floor.carts.map(({ stack }) => [...stack]);
  const onFloor: number[][] = Array.from({ length: floor.kindCount }, () => []);
  for (const box of floor.loose) onFloor[floor.kindOf[box]!]!.push(box);
  return steps.map(({ stack, load, place }) => {
    const from = stack < 0 ? -1 : work.stacks[stack]!.cart;
    const to = load < 0 ? -1 : work.loads[load]!.cart;
    const { kinds } = floor.loads[load] ?? { kinds: [] };
    const box = from >= 0 ? stacks[from]!.pop() : onFloor[kinds[kinds.length - work.loads[load]!.on.length + place]!]!.pop();
    invariant(box !== undefined, 'a step moves a box');
    if (to < 0) onFloor[floor.kindOf[box]!]!.push(box);
    else stacks[to]!.push(box);
    return { box, from, to };
  });
}
