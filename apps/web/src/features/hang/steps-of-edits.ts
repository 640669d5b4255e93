/** What was, what is and what was taken back, of a value that is edited step by step. */
export interface Steps<T> {
  readonly past: readonly T[];
  readonly now: T;
  readonly future: readonly T[];
}

const mostKept = 200;

export const firstStep = <T>(now: T): Steps<T> => ({ past: [], now, future: [] });

/** A new value; what was taken back before it is given up. The same value is no step. */
export const stepTo = <T>(steps: Steps<T>, now: T, isSame: (one: T, other: T) => boolean): Steps<T> =>
  isSame(steps.now, now) ? steps : { past: [...steps.past, steps.now].slice(-mostKept), now, future: [] };

export function stepBack<T>({ past, now, future }: Steps<T>): Steps<T> {
  const before = past.at(-1);
  return before === undefined ? { past, now, future } : { past: past.slice(0, -1), now: before, future: [now, ...future] };
}

export function stepOn<T>({ past, now, future }: Steps<T>): Steps<T> {
  const [next, ...rest] = future;
  return next === undefined ? { past, now, future } : { past: [...past, now], now: next, future: rest };
}
