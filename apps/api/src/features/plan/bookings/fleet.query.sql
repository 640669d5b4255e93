-- calendar
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
WITH grouped AS MATERIALIZED (
  SELECT model, state = 'in service' AND ($3::text IS NULL OR depot = $3) AS serves, $1::date AS first, least($2::date, CASE WHEN due_state IS NULL THEN NULL ELSE coalesce(due_on, $1::date - 1) END, due_holds_through) AS last, count(*) AS count
  FROM item WHERE kind = 'box' AND state <> 'retired' AND NOT rest ? 'hire' GROUP BY 1, 2, 4
  UNION ALL
  SELECT model, state = 'in service' AND ($3::text IS NULL OR depot = $3), greatest($1::date, (rest->'hire'->>'from')::date), least(least($2::date, CASE WHEN due_state IS NULL THEN NULL ELSE coalesce(due_on, $1::date - 1) END, due_holds_through), (rest->'hire'->>'to')::date), 1
  FROM item WHERE kind = 'box' AND state <> 'retired' AND rest ? 'hire'),
held AS (SELECT model, sum(count)::int AS count FROM grouped GROUP BY model),
serving AS (SELECT model, first, last, sum(count) AS count FROM grouped WHERE serves AND first <= last GROUP BY model, first, last),
promise AS MATERIALIZED (
  SELECT model, state = 'in service' AND ($3::text IS NULL OR depot = $3) AS serves, greatest($1::date, (rest->'hire'->>'from')::date) AS first, least(least($2::date, CASE WHEN due_state IS NULL THEN NULL ELSE coalesce(due_on, $1::date - 1) END, due_holds_through), (rest->'hire'->>'to')::date) AS last,
    greatest($1::date, lower(period)) AS "from", least($2::date, upper(period) - 1) AS "to"
  FROM booking JOIN item ON item.id = booking.item_id AND item.kind = 'box' AND item.state <> 'retired'
  WHERE booking.count IS NULL AND (hold_until IS NULL OR hold_until > now()) AND period && daterange($1::date, $2::date, '[]')),
taken AS (
  SELECT model, "from" + number AS day, count(*)::int AS promised, count(*) FILTER (WHERE serves AND "from" + number BETWEEN first AND last)::int AS served
  FROM promise, generate_series(0, "to" - "from") number GROUP BY model, "from" + number),
able AS (
  SELECT model, first + number AS day, sum(count)::int AS count FROM serving, generate_series(0, last - first) number GROUP BY model, first + number)
SELECT held.model, held.count, ($1::date + number)::text AS day, coalesce(able.count, 0) - coalesce(taken.served, 0) AS free, coalesce(taken.promised, 0) AS promised
FROM held CROSS JOIN generate_series(0, $2::date - $1::date) number
LEFT JOIN able ON able.model = held.model AND able.day = $1::date + number LEFT JOIN taken ON taken.model = held.model AND taken.day = $1::date + number
ORDER BY held.model COLLATE "C", number;
SELECT tour.data, coalesce((SELECT jsonb_object_agg(model, count) FROM (SELECT item.model, count(*) AS count FROM booking JOIN item ON item.id = booking.item_id
  WHERE booking.holder_kind = 'tour' AND booking.holder_id = tour.id AND item.kind = 'box' GROUP BY item.model) own), '{}') AS held
FROM tour WHERE removed_at IS NULL AND prep_from <= $2::date AND return_to >= $1::date AND ($3::text IS NULL OR data->>'depot' = $3);

-- remedies
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT EXISTS (SELECT FROM item WHERE NOT due_known) OR EXISTS (SELECT FROM item WHERE due_holds_through < $1) AS unknown;
SELECT item.id FROM item LEFT JOIN booking ON booking.item_id = item.id AND booking.count IS NULL AND period @> $2::date AND (hold_until IS NULL OR hold_until > now())
WHERE item.kind = 'box' AND item.model = $1 AND item.state <> 'retired' AND (booking.id IS NOT NULL OR item.state <> 'in service' OR item.rest ? 'hire'
  OR item.depot <> coalesce($3, item.depot) OR item.due_state IS NOT NULL AND (item.due_on IS NULL OR item.due_on < $2::date OR item.due_holds_through < $2::date))
ORDER BY item.rest ? 'hire', booking.id IS NOT NULL, item.depot <> coalesce($3, item.depot), item.state, item.id LIMIT 500;
SELECT data FROM rule WHERE kind = 'examination' AND is_accepted ORDER BY place;
SELECT item_id AS item, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", tour_name AS tour FROM booking
       WHERE item_id = ANY($1) AND count IS NULL AND (hold_until IS NULL OR hold_until > now()) ORDER BY lower(period), item_id;
SELECT item.id, item.kind, item.model, item.state, item.depot, item.count, item.in_item AS "inItem", item.rest, CASE WHEN NOT item.is_accepted THEN 'item'
  WHEN (CASE item.kind WHEN 'box' THEN 'boxes' ELSE item.kind || 's' END, item.model) IN (SELECT kind, model FROM model WHERE NOT is_accepted) THEN 'model' END AS unaccepted,
       made.examinations, happened.incidents, stands.stack
     FROM item
     LEFT JOIN (SELECT item_id, jsonb_agg(CASE WHEN data ? 'answers' THEN jsonb_set(data, '{answers}', (SELECT coalesce(jsonb_agg(day), '[]') FROM jsonb_array_elements(data->'answers') day
  WHERE NOT EXISTS (SELECT FROM incident later WHERE later.item_id = examination.item_id AND later.on_day::text = day #>> '{}' AND later.after_examination >= examination.id)))
  ELSE data END ORDER BY id) AS examinations FROM examination
                WHERE ($1::text[] IS NULL OR item_id = ANY($1))
                  AND NOT EXISTS (SELECT 1 FROM examination AS later WHERE later.supersedes = examination.id)
                GROUP BY item_id) AS made ON made.item_id = item.id
     LEFT JOIN (SELECT item_id, jsonb_agg(jsonb_build_object('on', on_day, 'what', what) ORDER BY id) AS incidents FROM incident
                WHERE ($1::text[] IS NULL OR item_id = ANY($1)) GROUP BY item_id) AS happened ON happened.item_id = item.id
     LEFT JOIN (SELECT stack_cart, array_agg(id ORDER BY stack_slot) AS stack FROM item
                WHERE stack_cart IS NOT NULL AND ($1::text[] IS NULL OR stack_cart = ANY($1)) GROUP BY stack_cart) AS stands ON stands.stack_cart = item.id
     WHERE $1::text[] IS NULL OR item.id = ANY($1)
     ORDER BY item.place;
