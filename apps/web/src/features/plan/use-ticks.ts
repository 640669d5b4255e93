import { useState } from 'react';
import { useOutbox } from '../../platform/outbox/outbox.js';
import { ticksWith } from '../../platform/outbox/pending.js';
import { useProgress } from './use-plan-parts.js';

interface Ticked {
  readonly planId: string;
  readonly tourId: string;
  readonly showId: string;
}

/** Ticks of a plan as this person left them, and a tick more; `unkept` where the device had no room for one. */
export function useTicks({ planId, tourId, showId }: Ticked) {
  const outbox = useOutbox();
  const ticks = useProgress(planId).data?.ticks ?? [];
  const [unkept, setUnkept] = useState<unknown>(null);
  const tick = (what: string, done: boolean, words: string, remark: string | null = null) =>
    void outbox
      .put({ kind: 'tick', values: { planId, what, done, ...(remark === null ? {} : { remark }) }, words, tourId, showId })
      .catch(setUnkept);
  return { ticked: ticksWith(ticks, outbox.waiting, planId), tick, unkept };
}
