import type { WorkShare } from './work-share.js';
import { type PinnedState, type PinnedStates, compareStates } from './states.js';

/** More states than this are not held; the search then ends as if its work were done. */
const mostHeld = 1_500_000;

export interface PinnedOutcome {
  /** No plan sets fewer boxes aside. */
  readonly bound: number;
  readonly best: PinnedState | undefined;
}

/**
 * States in the order of the boxes that they set aside in all, at the least; of equal ones the latest first. Ends with the first that is done: none sets
 * fewer aside. `below`: plans that set as many aside or more are not wanted.
 */
export function bestFirst(states: PinnedStates, below: number, share: WorkShare): PinnedOutcome {
  const first = states.first(below);
  const open: PinnedState[][] = [];
  open[first.least] = [first];
  const known = new Map<string, number>([[first.key, 0]]);
  for (let least = first.least; least < below; least++) {
    for (let state = open[least]?.pop(); state; state = open[least]!.pop()) {
      if (states.isDone(state)) return { bound: least, best: state };
      if (known.get(state.key)! < state.aside) continue;
      const children: PinnedState[] = [];
      for (let stack = 0; stack < states.stackCount; stack++) {
        const child = states.dig(state, stack, (key, aside) => (known.get(key) ?? below) > aside, below);
        if (!child || child.least >= below) continue;
        known.set(child.key, child.aside);
        children.push(child);
      }
      // What is pushed last is looked at first.
      for (const child of children.sort((a, b) => compareStates(b, a))) (open[child.least] ??= []).push(child);
      if (!share.spend(states.takeWork()) || known.size > mostHeld) return { bound: least, best: undefined };
    }
  }
  return { bound: below, best: undefined };
}

/** A plan soon: the `width` most promising states go on, step by step; none where that finds nothing below, or the budget ends first. */
export function beam(states: PinnedStates, width: number, below: number, share: WorkShare): PinnedState | undefined {
  let best: PinnedState | undefined;
  let most = below;
  for (let level = [states.first(below)]; level.length > 0; ) {
    const children: PinnedState[] = [];
    const seen = new Map<string, number>();
    for (const state of level) {
      if (state.least >= most) continue;
      if (states.isDone(state)) {
        best = state;
        most = state.aside;
        continue;
      }
      for (let stack = 0; stack < states.stackCount; stack++) {
        const child = states.dig(state, stack, (key, aside) => (seen.get(key) ?? most) > aside, most);
        if (!child) continue;
        seen.set(child.key, child.aside);
        children.push(child);
      }
      if (!share.spend(states.takeWork())) return best;
    }
    level = children.sort(compareStates).slice(0, width);
  }
  return best;
}
