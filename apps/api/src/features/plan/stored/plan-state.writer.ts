import type { EntityManager } from 'typeorm';
import { PackPlanRow } from './rows.js';

/** Revisions in force of a tour, or of one of its shows, are in force no longer; gives how many there were. */
export async function supersedeReleased(manager: EntityManager, tourId: string, showId?: string): Promise<number> {
  const { affected } = await manager
    .getRepository(PackPlanRow)
    .update({ tourId, state: 'released', ...(showId === undefined ? {} : { showId }) }, { state: 'superseded' });
  return affected ?? 0;
}
