import type { EntityManager } from 'typeorm';
import type { TickKey } from '#pack-plan';
import { textOfTick } from '../../../planning/snapshot/written-tick.js';
import { type Author, authorId } from '../../../platform/sign-in/person.js';
import { TickRow } from './rows.js';

/** What has been ticked off a plan, each as the text of its key. */
export async function ticksOf(manager: EntityManager, planId: string): Promise<string[]> {
  const rows = await manager
    .getRepository(TickRow)
    .find({ where: { planId }, order: { tickedAt: 'ASC', kind: 'ASC', subject: 'ASC', place: 'ASC' } });
  return rows.map(textOfTick);
}

export interface TickMade {
  readonly at: Date;
  readonly who: Author;
  /** Who did it together, or what the paper says that it is entered from. */
  readonly remark: string | null;
}

export async function putTick(manager: EntityManager, planId: string, key: TickKey, { at, who, remark }: TickMade): Promise<void> {
  await manager.getRepository(TickRow).save({ planId, ...key, tickedAt: at, tickedBy: who.name, tickedById: authorId(who), remark });
}

export async function takeTickBack(manager: EntityManager, planId: string, key: TickKey): Promise<void> {
  await manager.getRepository(TickRow).delete({ planId, ...key });
}

export const readTicks = (manager: EntityManager, planId: string): Promise<TickRow[]> =>
  manager.getRepository(TickRow).find({ where: { planId } });

/** Ticks of an earlier plan that still stand on one that is made from it, by whom and when they were made. */
export async function carryTicks(
  manager: EntityManager,
  ticks: readonly TickRow[],
  standing: ReadonlySet<string>,
  toId: string,
): Promise<void> {
  const carried = ticks.filter((each) => standing.has(textOfTick(each))).map((each) => ({ ...each, planId: toId }));
  if (carried.length > 0) await manager.getRepository(TickRow).insert(carried);
}
