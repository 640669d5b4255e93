import { useState } from 'react';
import { useOutbox } from '../../platform/outbox/outbox.js';
import { ticksWith } from '../../platform/outbox/pending.js';

interface Ticked {
  readonly plan: { readonly id: string; readonly ticks: readonly string[] };
  readonly tourId: string;
  readonly showId: string;
}

/** Ticks of a plan as this person left them, and a tick more; `unkept` where the device had no room for one. */
export function useTicks({ plan, tourId, showId }: Ticked) {
  const outbox = useOutbox();
  const [unkept, setUnkept] = useState<unknown>(null);
  const tick = (what: string, done: boolean, words: string) =>
    void outbox.put({ kind: 'tick', values: { planId: plan.id, what, done }, words, tourId, showId }).catch(setUnkept);
  return { ticked: ticksWith(plan.ticks, outbox.waiting, plan.id), tick, unkept };
}
