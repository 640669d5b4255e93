import type { EntityManager } from 'typeorm';
import { currentRequest } from '../../platform/request-once/current-request.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { FloorRecordRow } from './rows.js';

/** The show that a record is of; null for what was seen of an item outside any. */
export interface OfShow {
  readonly tourId: string;
  readonly showId: string;
}

/** Writes what was seen of items, with when it was done by the clock of the device where that said so. */
export async function keepFloorRecords(
  manager: EntityManager,
  of: OfShow | null,
  records: readonly { readonly itemId: string; readonly kind: FloorRecordRow['kind']; readonly data: object }[],
  at: Date,
  who: SignedIn,
): Promise<void> {
  const doneAt = currentRequest()?.doneAt ?? null;
  const show = { tourId: of?.tourId ?? null, showId: of?.showId ?? null };
  await manager.getRepository(FloorRecordRow).insert(records.map((each) => ({ ...show, ...each, at, doneAt, byId: who.id })));
}
