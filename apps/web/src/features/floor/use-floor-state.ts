import { type FloorState, rowKey, tickText, whatNow } from '#pack-plan';
import { useOutbox } from '../../platform/outbox/outbox.js';
import { ticksWith } from '../../platform/outbox/pending.js';
import { useBarred } from '../plan/barred-notes.js';
import { useCarts, usePicks, useProgress, useTrucks } from '../plan/use-plan-parts.js';
import type { PlanInForce } from '../plan/use-show.js';
import { useConfirmed } from './cart/use-confirmed.js';
import { useFloorWork } from './moves/use-floor-work.js';

/** What to do now; undefined until the parts of the plan are read. */
export function useFloorState(plan: PlanInForce) {
  const { waiting } = useOutbox();
  const work = useFloorWork(plan.id);
  const carts = useCarts(plan.id);
  const trucks = useTrucks(plan.id, plan.trucks);
  const hangs = usePicks(plan.id, plan.hangs);
  const progress = useProgress(plan.id);
  const barred = useBarred(plan.id);
  const confirmed = useConfirmed(plan.id);
  const parts = [work, carts, trucks, progress];
  const fault = parts.find((each) => each.isError && each.data === undefined)?.error ?? null;
  if (!work.data || !carts.data || !trucks.data || !progress.data) return { fault, now: undefined };
  const ticked = ticksWith(progress.data.ticks, waiting, plan.id);
  const state: FloorState = {
    barred: barred.items.map((each) => each.itemId),
    moves: work.data.list.status === 'cannot' ? null : work.data.left,
    loads: carts.data.loads.map(({ id, cart }) => ({ id, cart, isConfirmed: confirmed.has(id) })),
    trucks: trucks.data.map(({ id, rows }) => ({
      id,
      rows: rows.map(({ number }) => ({ number, isIn: ticked.has(tickText(rowKey(id, number))) })),
    })),
    hangs:
      hangs.data?.hangs.map(({ hang, name, runningOrder: { goingUp } }) => {
        const holds = goingUp.filter((each) => each.hold);
        return { id: hang, name, holds: holds.length, ticked: holds.filter((each) => ticked.has(each.key)).length };
      }) ?? null,
  };
  return { fault, now: whatNow(state) };
}
