-- head
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item, item.stack_cart, item.stack_slot,
  item.due_on::text AS due_on, item.due_state, item.rest,
  CASE WHEN item.kind = 'cart' THEN (SELECT coalesce(array_agg(box.id ORDER BY box.stack_slot), '{}') FROM item box WHERE box.stack_cart = item.id) END AS stack,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('tour', tour_name, 'from', lower(period), 'to', upper(period) - 1, 'count', booking.count) ORDER BY lower(period)), '[]')
   FROM (SELECT * FROM booking WHERE booking.item_id = item.id ORDER BY upper(period) DESC LIMIT 50) booking) AS promises
FROM item WHERE item.id = $1;

-- history
WITH RECURSIVE lineage (id, through) AS (SELECT $1::text, NULL::bigint
  UNION ALL SELECT split.parent_id, split.through_event FROM lineage JOIN lot_split split ON split.child_id = lineage.id)
SELECT event.id, at, who, what, sentence FROM lineage JOIN event ON event.item_id = lineage.id AND (lineage.through IS NULL OR event.id <= lineage.through)
WHERE row_table IS NULL AND ($2::bigint IS NULL OR event.id < $2) ORDER BY event.id DESC LIMIT $3;
