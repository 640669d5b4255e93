import { Circles } from './circles.js';
import type { PinnedWork } from './pinned-work.js';
import { plainPlan } from './plain-plan.js';
import { type PinnedStep, type Progress, SafeMoves } from './progress.js';

/** A state in which every safe move has been made. */
export interface PinnedState {
  /** Boxes off each stack and in place at each load: what there is to say of a state. */
  readonly key: string;
  /** Boxes set aside so far beyond those that have to be, and at least so many in all. */
  readonly aside: number;
  readonly least: number;
  readonly inPlace: number;
  readonly parent: PinnedState | undefined;
  /** Boxes were taken off this stack ... */
  readonly stack: number;
  /** ... until so many were off it. */
  readonly until: number;
}

/** Fewer set aside in all comes first, then more in place; the rest by stack, so that equal input gives the equal order. */
export const compareStates = (a: PinnedState, b: PinnedState): number => a.least - b.least || b.inPlace - a.inPlace || a.stack - b.stack;

/** The states of one work, and how one leads to the next. */
export class PinnedStates {
  readonly stackCount: number;
  private readonly safe: SafeMoves;
  private readonly circles: Circles;
  private readonly loadCount: number;

  constructor(work: PinnedWork) {
    this.safe = new SafeMoves(work);
    this.circles = new Circles(this.safe);
    this.stackCount = work.stacks.length;
    this.loadCount = work.loads.length;
  }

  first(below: number): PinnedState {
    const progress = this.safe.begin();
    this.safe.closeAll(progress);
    const least = this.circles.atLeast(progress, below);
    return { key: keyOf(progress), aside: 0, least, inPlace: inPlace(progress), parent: undefined, stack: -1, until: 0 };
  }

  isDone({ key }: PinnedState): boolean {
    return this.safe.isDone(this.progressOf(key));
  }

  /**
   * Boxes off one stack until one goes straight into its place, or until the cart under it is free for a load. Whatever a shortest plan does first ends so in
   * some stack, and what it lifts off others before can wait. undefined: it does not, or the state is not `isNew`.
   */
  dig(state: PinnedState, stack: number, isNew: (key: string, aside: number) => boolean, below: number): PinnedState | undefined {
    const { safe } = this;
    const progress = this.progressOf(state.key);
    const dug = safe.nextEvent(stack, progress);
    if (!dug) return undefined;
    const { until } = dug;
    const aside = state.aside + dug.aside;
    progress.lifted[stack] = until;
    safe.closeAfter(stack, progress);
    const key = keyOf(progress);
    if (!isNew(key, aside)) return undefined;
    const least = Math.max(state.least, aside + this.circles.atLeast(progress, below - aside));
    return { key, aside, least, inPlace: inPlace(progress), parent: state, stack, until };
  }

  /** Units of work since the last time: boxes looked at, some to a unit, and copies of states. */
  takeWork(): number {
    const units = this.stackCount + this.circles.looked / 20;
    this.circles.looked = 0;
    return units;
  }

  /** The moves of a plan that took no search. */
  plainSteps(): PinnedStep[] {
    return plainPlan(this.safe);
  }

  /** The moves that lead to a state, safe ones and others. */
  stepsTo(last: PinnedState): PinnedStep[] {
    const path: PinnedState[] = [];
    for (let state: PinnedState | undefined = last; state?.parent; state = state.parent) path.unshift(state);
    const steps: PinnedStep[] = [];
    const progress = this.safe.begin();
    this.safe.closeAll(progress, this.safe.isAside, steps);
    for (const { stack, until } of path) {
      for (; progress.lifted[stack]! < until; progress.lifted[stack]!++) steps.push({ stack, load: -1, place: -1 });
      this.safe.closeAfter(stack, progress, this.safe.isAside, steps);
    }
    return steps;
  }

  private progressOf(key: string): Progress {
    const progress = this.safe.begin();
    for (let stack = 0; stack < this.stackCount; stack++) progress.lifted[stack] = key.charCodeAt(stack);
    for (let load = 0; load < this.loadCount; load++) progress.placed[load] = key.charCodeAt(this.stackCount + load);
    return progress;
  }
}

const keyOf = ({ lifted, placed }: Progress): string => String.fromCharCode(...lifted) + String.fromCharCode(...placed);

const inPlace = ({ placed }: Progress): number => placed.reduce((sum, count) => sum + count, 0);
