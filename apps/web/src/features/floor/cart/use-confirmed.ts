import { checkCart } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { pendingOf } from '../../../platform/outbox/pending.js';
import { useBarred } from '../../plan/barred-notes.js';
import { useCarts, useProgress } from '../../plan/use-plan-parts.js';

/** Loads that are confirmed, those on their way with them. */
export function useConfirmed(planId: string): ReadonlySet<string> {
  const { waiting } = useOutbox();
  const carts = useCarts(planId).data;
  const { items } = useBarred(planId);
  const checks = useProgress(planId).data?.cartChecks ?? [];
  const isBarred = (id: string) => items.some((each) => each.loads.includes(id));
  const onTheirWay = pendingOf(waiting, 'cart', planId).flatMap(({ values }) => {
    const read = carts?.loads.find((each) => each.id === values.load);
    const agrees = carts && read && checkCart({ carts }, read, values.serials as string[]).every((each) => each.agrees);
    return read && agrees && !isBarred(read.id) ? [read.id] : [];
  });
  return new Set([...checks.map((each) => each.load), ...onTheirWay]);
}
