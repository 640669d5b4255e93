-- a page
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item, item.stack_cart, item.stack_slot,
  item.due_on::text AS due_on, item.due_state, (state = 'in service' AND due_on IS NOT NULL) AS usable FROM item WHERE due_state IS NOT NULL AND state <> 'retired'
  AND ($1::boolean IS NULL OR ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id) > ($1, coalesce($2::date, '-infinity'::date), $3))
  AND ($5::text IS NULL OR depot = $5) AND ($6::text IS NULL OR kind = $6)
  AND ($7::date IS NULL OR ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date))) <= (true, $7))
  AND ($8::text IS NULL OR id = ANY (ARRAY(SELECT item_id FROM booking WHERE holder_kind = 'tour' AND holder_id = $8)))
  ORDER BY (state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id LIMIT $4;

-- of a depot
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item, item.stack_cart, item.stack_slot,
  item.due_on::text AS due_on, item.due_state, (state = 'in service' AND due_on IS NOT NULL) AS usable FROM item WHERE due_state IS NOT NULL AND state <> 'retired'
  AND ($1::boolean IS NULL OR ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id) > ($1, coalesce($2::date, '-infinity'::date), $3))
  AND ($5::text IS NULL OR depot = $5) AND ($6::text IS NULL OR kind = $6)
  AND ($7::date IS NULL OR ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date))) <= (true, $7))
  AND ($8::text IS NULL OR id = ANY (ARRAY(SELECT item_id FROM booking WHERE holder_kind = 'tour' AND holder_id = $8)))
  ORDER BY (state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id LIMIT $4;

-- of a kind
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item, item.stack_cart, item.stack_slot,
  item.due_on::text AS due_on, item.due_state, (state = 'in service' AND due_on IS NOT NULL) AS usable FROM item WHERE due_state IS NOT NULL AND state <> 'retired'
  AND ($1::boolean IS NULL OR ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id) > ($1, coalesce($2::date, '-infinity'::date), $3))
  AND ($5::text IS NULL OR depot = $5) AND ($6::text IS NULL OR kind = $6)
  AND ($7::date IS NULL OR ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date))) <= (true, $7))
  AND ($8::text IS NULL OR id = ANY (ARRAY(SELECT item_id FROM booking WHERE holder_kind = 'tour' AND holder_id = $8)))
  ORDER BY (state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id LIMIT $4;

-- of a tour
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item, item.stack_cart, item.stack_slot,
  item.due_on::text AS due_on, item.due_state, (state = 'in service' AND due_on IS NOT NULL) AS usable FROM item WHERE due_state IS NOT NULL AND state <> 'retired'
  AND ($1::boolean IS NULL OR ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id) > ($1, coalesce($2::date, '-infinity'::date), $3))
  AND ($5::text IS NULL OR depot = $5) AND ($6::text IS NULL OR kind = $6)
  AND ($7::date IS NULL OR ((state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date))) <= (true, $7))
  AND ($8::text IS NULL OR id = ANY (ARRAY(SELECT item_id FROM booking WHERE holder_kind = 'tour' AND holder_id = $8)))
  ORDER BY (state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), id LIMIT $4;
