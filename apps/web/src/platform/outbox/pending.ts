import type { Action } from './queue.js';

/** Ticks of a plan as the person left them: what the house knows, with what is on its way. */
export function ticksWith(ticks: readonly string[], waiting: readonly Action[], planId: string): ReadonlySet<string> {
  const ticked = new Set(ticks);
  for (const { kind, values } of waiting) {
    if (kind !== 'tick' || values.planId !== planId) continue;
    if (values.done === true) ticked.add(String(values.what));
    else ticked.delete(String(values.what));
  }
  return ticked;
}

/** Actions of one kind for one plan that are on their way. */
export const pendingOf = (waiting: readonly Action[], kind: string, planId: string): readonly Action[] =>
  waiting.filter((each) => each.kind === kind && each.values.planId === planId);
