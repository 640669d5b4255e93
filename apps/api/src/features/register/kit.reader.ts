import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { Item, Kit } from '#tour-file';
import { loadItems, loadKit } from '../../planning/snapshot/kit-snapshot.js';
import type { ItemRow } from './rows.js';

/** The register in the shape of a tour file: what every plan is made from. */
@Injectable()
export class KitReader {
  load(manager: EntityManager): Promise<Kit> {
    return loadKit(manager);
  }

  /** All items, or those named. */
  items(manager: EntityManager, ids?: readonly string[]): Promise<Item[]> {
    return loadItems(manager, ids);
  }
}

/** Columns of the item's own row; the stack of a cart is written on the boxes that stand on it. */
export function itemColumns(item: Item): Pick<ItemRow, 'id' | 'kind' | 'model' | 'state' | 'depot' | 'count' | 'inItem' | 'rest'> {
  const { id, kind, model, state, depot, count, in: inItem, stack: _stack, examinations: _examinations, events: _events, ...own } = item;
  const { unaccepted: _unaccepted, ...rest } = own;
  return { id, kind, model, state, depot, count: count ?? null, inItem: inItem ?? null, rest };
}
