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

  /**
   * As much of the register as these rows can be judged by: what is on file of them, what they refer to, and the names offered where that
   * is not on file. Many rows are judged by all of it.
   */
  async around(manager: EntityManager, rows: readonly Item[]): Promise<Kit> {
    if (rows.length > mostApart) return this.load(manager);
    const given = new Set(rows.map((item) => item.id));
    const own = await loadItems(manager, [...given]);
    const named = [...new Set([...rows, ...own].flatMap((item) => [...(item.in === undefined ? [] : [item.in]), ...(item.stack ?? [])]))];
    const offered = await offeredFor(
      manager,
      named.filter((id) => !given.has(id)),
    );
    const kit = await loadKit(manager, [...new Set([...given, ...named, ...offered])]);
    return { ...kit, items: kit.items.map((item) => (given.has(item.id) ? item : withoutPlace(item))) };
  }

  /** The same for items on file that were changed there, with the carts on which they stand: a cart says which models it carries. */
  async aroundChanged(manager: EntityManager, ids: readonly string[]): Promise<Kit> {
    const carts = await manager.query<{ id: string }[]>(
      'SELECT DISTINCT stack_cart AS id FROM item WHERE id = ANY($1) AND stack_cart IS NOT NULL',
      [ids],
    );
    return this.around(manager, await loadItems(manager, [...new Set([...ids, ...carts.map((each) => each.id)])]));
  }

  /** All items, or those named. */
  items(manager: EntityManager, ids?: readonly string[]): Promise<Item[]> {
    return loadItems(manager, ids);
  }
}

/** More rows than this are judged by the whole register. */
const mostApart = 2_000;

/** An item that others refer to: where it is itself is not asked. */
function withoutPlace({ in: _in, stack: _stack, ...item }: Item): Item {
  return item;
}

/** What a fault offers for serials that are not on file: the first that begin alike, and the first of all; none when all are on file. */
async function offeredFor(manager: EntityManager, named: readonly string[]): Promise<readonly string[]> {
  if (named.length === 0) return [];
  const rows = await manager.query<{ id: string }[]>(
    `WITH missing AS (SELECT DISTINCT lower(left(name, 2)) AS beginning FROM unnest($1::text[]) AS name
                      WHERE NOT EXISTS (SELECT FROM item WHERE item.id = name))
     (SELECT alike.id FROM missing, LATERAL (SELECT id FROM item WHERE starts_with(lower(id), beginning) ORDER BY place LIMIT 5) AS alike)
     UNION (SELECT id FROM item WHERE EXISTS (SELECT FROM missing) ORDER BY place LIMIT 5)`,
    [named],
  );
  return rows.map((each) => each.id);
}

/** Columns of the item's own row; the stack of a cart is written on the boxes that stand on it. */
export function itemColumns(item: Item): Pick<ItemRow, 'id' | 'kind' | 'model' | 'state' | 'depot' | 'count' | 'inItem' | 'rest'> {
  const { id, kind, model, state, depot, count, in: inItem, stack: _stack, examinations: _examinations, events: _events, ...own } = item;
  const { unaccepted: _unaccepted, ...rest } = own;
  return { id, kind, model, state, depot, count: count ?? null, inItem: inItem ?? null, rest };
}
