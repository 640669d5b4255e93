import { useQuery } from '@tanstack/react-query';
import type { ReturnPiece } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { pendingOf } from '../../../platform/outbox/pending.js';
import { request } from '../../../platform/request.js';
import type { OnFloor } from '../page/on-floor.js';
import { returnSheetQuery } from './operations.js';

/** What of the show is back, with what was scanned on this device and is on its way. */
export function useReturn({ plan, show }: OnFloor) {
  const { waiting } = useOutbox();
  const query = useQuery({
    queryKey: ['return sheet', plan.id, show.tourId, show.showId],
    queryFn: async () => (await request(returnSheetQuery, { planId: plan.id })).returnSheet as readonly ReturnPiece[],
  });
  const carts = pendingOf(waiting, 'return cart', plan.id).map(({ values, doneAt, personName }) => ({
    ids: [String(values.cart), ...(values.serials as string[])],
    back: { moment: doneAt, by: personName },
  }));
  const items = pendingOf(waiting, 'return items', plan.id).map(({ values, doneAt, personName }) => ({
    ids: values.items as string[],
    back: { moment: doneAt, by: personName },
  }));
  const onTheirWay = new Map([...carts, ...items].flatMap(({ ids, back }) => ids.map((id) => [id, back] as const)));
  const pieces = query.data?.map((each) => ({ ...each, back: onTheirWay.get(each.id) ?? each.back }));
  return { ...query, pieces };
}
