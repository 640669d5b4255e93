import type { EntityManager } from 'typeorm';
import type { Words } from '#words';
import { recordEvents } from '../../../platform/event-log.js';
import { currentRequest } from '../../../platform/request-once/current-request.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { itemsIn } from './barred-act.reader.js';
import { BarredActRow } from './barred-act.rows.js';
import type { BarredInPlan } from './barred.reader.js';

/** What somebody did, and of which plan. */
export interface DoneOf {
  readonly tourId: string;
  readonly showId: string;
  readonly planId: string;
  readonly show: string;
  readonly hang: string | null;
  readonly what: string;
  readonly words: string;
}

/**
 * Keeps as done although barred what a device says was done at a time of its own, and what the gate refuses now. Asked at once, without such a time,
 * nothing was done yet, and nothing is kept.
 */
export async function keepBarredAct(
  manager: EntityManager,
  of: DoneOf,
  barred: readonly BarredInPlan[],
  at: Date,
  who: SignedIn,
  words: Words,
): Promise<boolean> {
  const doneAt = currentRequest()?.doneAt ?? null;
  if (doneAt === null || barred.length === 0) return false;
  const items = barred.map(({ item, reason }) => ({ item, why: reason }));
  const { show, ...row } = of;
  await manager.getRepository(BarredActRow).insert({ ...row, items, doneById: who.id, doneAt, toldAt: at });
  await recordEvents(manager, who, at, [
    {
      what: 'done although barred',
      tourId: of.tourId,
      showId: of.showId,
      sentence: `Done although barred: ${of.words} of ${show}, with ${itemsIn(items, words)}. It counts as no tick and no signature.`,
    },
  ]);
  return true;
}
