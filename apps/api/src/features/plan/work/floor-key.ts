import { type Queryable, theRow } from '../../../planning/snapshot/queryable.js';

/**
 * The floor as one short text: where every box and cart stands and in what state, what carts may carry, and what is ticked on these plans. Equal keys:
 * equal work lists. Read without reading the register.
 */
export async function floorKey(db: Queryable, planIds: readonly string[]): Promise<string> {
  const { key } = await theRow<{ key: string }>(
    db,
    `SELECT concat_ws(' ', array_to_string($1::uuid[], ' '),
       (SELECT sum(hashtextextended(concat_ws('|', id, kind, model, state, depot, in_item, stack_cart, stack_slot, rest ->> 'reason'), 0)::numeric)
        FROM item WHERE kind IN ('box', 'cart')),
       (SELECT sum(hashtextextended(concat_ws('|', model, data ->> 'capacity', data ->> 'carries'), 0)::numeric) FROM model WHERE kind = 'carts'),
       (SELECT sum(hashtextextended(concat_ws('|', plan_id, kind, subject, place), 0)::numeric) FROM tick WHERE plan_id = ANY($1::uuid[]))) AS key`,
    [planIds],
  );
  return key;
}
