-- a page
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
SELECT counted.total, page.* FROM
  (SELECT count(*)::int AS total FROM (SELECT FROM item WHERE ($1::text IS NULL OR item.kind = $1) AND ($2::text IS NULL OR item.state = $2) AND ($3::text IS NULL OR item.model = $3)
  AND ($4::text IS NULL OR (item.id || ' ' || item.model || ' ' || item.depot || ' ' || item.rest::text) ILIKE $4)
  AND ($5::text IS NULL OR lower(item.id) LIKE $5) AND ($6::text IS NULL OR item.depot = $6) AND ($7::text[] IS NULL OR item.id = ANY($7)) LIMIT 1001) fitting) counted
  LEFT JOIN LATERAL (SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item, item.stack_cart, item.stack_slot,
  item.due_on::text AS due_on, item.due_state, item.id::text AS sort_key FROM item WHERE ($1::text IS NULL OR item.kind = $1) AND ($2::text IS NULL OR item.state = $2) AND ($3::text IS NULL OR item.model = $3)
  AND ($4::text IS NULL OR (item.id || ' ' || item.model || ' ' || item.depot || ' ' || item.rest::text) ILIKE $4)
  AND ($5::text IS NULL OR lower(item.id) LIKE $5) AND ($6::text IS NULL OR item.depot = $6) AND ($7::text[] IS NULL OR item.id = ANY($7)) AND ($8::text IS NULL OR (item.id, item.id) > ($8::text::text, $9::text)) ORDER BY item.id, item.id LIMIT $10) page ON true ORDER BY page.sort_key, page.id;

-- two letters
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
SELECT counted.total, page.* FROM
  (SELECT count(*)::int AS total FROM (SELECT FROM item WHERE ($1::text IS NULL OR item.kind = $1) AND ($2::text IS NULL OR item.state = $2) AND ($3::text IS NULL OR item.model = $3)
  AND ($4::text IS NULL OR (item.id || ' ' || item.model || ' ' || item.depot || ' ' || item.rest::text) ILIKE $4)
  AND ($5::text IS NULL OR lower(item.id) LIKE $5) AND ($6::text IS NULL OR item.depot = $6) AND ($7::text[] IS NULL OR item.id = ANY($7)) LIMIT 1001) fitting) counted
  LEFT JOIN LATERAL (SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item, item.stack_cart, item.stack_slot,
  item.due_on::text AS due_on, item.due_state, item.id AS sort_key FROM item WHERE ($1::text IS NULL OR item.kind = $1) AND ($2::text IS NULL OR item.state = $2) AND ($3::text IS NULL OR item.model = $3)
  AND ($4::text IS NULL OR (item.id || ' ' || item.model || ' ' || item.depot || ' ' || item.rest::text) ILIKE $4)
  AND ($5::text IS NULL OR lower(item.id) LIKE $5) AND ($6::text IS NULL OR item.depot = $6) AND ($7::text[] IS NULL OR item.id = ANY($7)) AND ($8::text IS NULL OR (lower(item.id) ~>~ lower($8) OR lower(item.id) = lower($8) AND item.id > $9)) ORDER BY lower(item.id) USING ~<~, item.id LIMIT $10) page ON true ORDER BY lower(page.id) USING ~<~, page.id;
