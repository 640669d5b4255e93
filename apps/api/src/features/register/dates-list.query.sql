-- a page
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item, item.stack_cart, item.stack_slot,
  item.due_on::text AS due_on, item.due_state, (state = 'in service' AND due_on IS NOT NULL) AS usable FROM item WHERE due_state IS NOT NULL AND state <> 'retired'
  AND ($1::boolean IS NULL OR ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id) > ($1, coalesce($2::date, '-infinity'::date), $3))
  ORDER BY (state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id LIMIT $4;
