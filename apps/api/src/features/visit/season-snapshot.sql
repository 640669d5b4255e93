-- a season
WITH promised AS MATERIALIZED (SELECT item_id, json_agg(json_build_object('from', lower(period), 'to', upper(period) - 1,
    'tour', CASE WHEN holder_kind = 'tour' THEN holder_id END, 'isHold', holder_kind = 'hold') ORDER BY lower(period), tour_name) AS stays
  FROM booking WHERE period && daterange($1::date, $2::date, '[]') AND (hold_until IS NULL OR hold_until > now()) GROUP BY item_id)
SELECT item.id, item.kind, item.model, item.depot, item_record.facts, promised.stays
FROM item JOIN item_record ON item_record.item_id = item.id LEFT JOIN promised ON promised.item_id = item.id
WHERE item.due_state IS NOT NULL AND item.state IN ('in service', 'quarantined') AND ($3::text IS NULL OR item.depot = $3)
  AND (item.due_on IS NULL OR item.due_on < $2::date OR item.due_holds_through IS NOT NULL) AND ($4::boolean OR promised.item_id IS NOT NULL)
ORDER BY item.id;
SELECT id, on_day::text AS on, depot, tour_id AS tour, show_id AS show FROM visit
WHERE state IN ('possible', 'agreed') AND on_day BETWEEN $1::date - 1100 AND $2::date AND on_day >= $3::date AND ($4::text IS NULL OR depot IS NULL OR depot = $4)
ORDER BY on_day, id;
SELECT id, data->>'depot' AS depot, coalesce((SELECT jsonb_agg(jsonb_build_object('id', show->>'id', 'from', show->>'from', 'to', show->>'to') ORDER BY show->>'from')
  FROM jsonb_array_elements(data->'shows') show), '[]') AS shows
FROM tour WHERE prep_from <= $2::date AND return_to >= $1::date;
