import { useQuery } from '@tanstack/react-query';
import type { Used } from '#pack-plan';
import { useOutbox } from '../../../platform/outbox/outbox.js';
import { pendingOf } from '../../../platform/outbox/pending.js';
import { request } from '../../../platform/request.js';
import type { OnFloor } from '../page/on-floor.js';
import { prepSheetQuery } from './operations.js';

export type PrepKind = 'bench' | 'splays' | 'trunk';

/** How a thing was found last; `on its way` is what this device has not brought to the house yet. */
export type Found = 'agrees' | 'does not agree' | 'on its way';

/** What was tested, read back and counted, with what was done on this device since. */
export function usePrep({ plan, show }: Pick<OnFloor, 'plan' | 'show'>) {
  const { waiting } = useOutbox();
  const query = useQuery({
    queryKey: ['prep sheet', plan.id, show.tourId],
    queryFn: async () => (await request(prepSheetQuery, { planId: plan.id })).prepSheet,
  });
  const found = new Map<string, Found>(
    query.data?.records.map(({ item, kind, agrees }) => [`${kind} ${item}`, agrees ? 'agrees' : 'does not agree']),
  );
  for (const kind of ['bench', 'splays', 'trunk'] as const)
    for (const { values } of pendingOf(waiting, kind, plan.id)) found.set(`${kind} ${String(values.item)}`, 'on its way');
  return {
    isRead: query.data !== undefined,
    fault: query.data === undefined ? query.error : null,
    uses: (query.data?.uses ?? []) as readonly Used[],
    foundOf: (kind: PrepKind, item: string | null): Found | null => (item === null ? null : (found.get(`${kind} ${item}`) ?? null)),
  };
}

export const foundWords: Readonly<Record<Found, string>> = { agrees: '○ done', 'does not agree': '■ not right', 'on its way': '◐ noted' };
