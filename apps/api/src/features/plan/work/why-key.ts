import type { Place } from '#pack-plan';
import { versionsOf } from '../../../planning/snapshot/input-versions.js';
import type { Queryable } from '../../../planning/snapshot/queryable.js';

/** A place of a plan with the versions of all that its reason hangs on: equal keys, equal reasons. */
export async function whyKey(db: Queryable, tourId: string, planId: string, { load, slot }: Place): Promise<string> {
  return JSON.stringify([planId, load, slot, await versionsOf(db, { tourId })]);
}
