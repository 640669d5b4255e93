import type { EntityManager } from 'typeorm';
import { NotFoundError } from '../../platform/faults/fault.js';
import { ItemRow } from './rows.js';

/** An item as people on a floor have it before them. */
export interface FloorItem {
  readonly id: string;
  readonly kind: string;
  readonly model: string;
  readonly state: string;
  /** Of a batch. */
  readonly count: number | null;
  /** The cart that a box stands on. */
  readonly stackCart: string | null;
}

/** The item of this name; null where nothing on file is called so. */
export const findFloorItem = (manager: EntityManager, id: string): Promise<FloorItem | null> =>
  manager.getRepository(ItemRow).findOneBy({ id });

export async function floorItem(manager: EntityManager, id: string): Promise<FloorItem> {
  const item = await findFloorItem(manager, id);
  if (!item) throw new NotFoundError(`The item ${id.slice(0, 80)}`);
  return item;
}

/** What stands on a cart, top first. */
export async function stackOn(manager: EntityManager, cart: string): Promise<readonly string[]> {
  const rows = await manager.getRepository(ItemRow).find({ select: { id: true }, where: { stackCart: cart }, order: { stackSlot: 'ASC' } });
  return rows.map((each) => each.id);
}
