-- a season
SELECT item.id, item.kind, item.model, item.depot, item.rest->'intervals' AS intervals, item.rest->>'declaredOn' AS "declaredOn"
FROM item WHERE item.due_state IS NOT NULL AND item.state IN ('in service', 'quarantined') AND ($3::text IS NULL OR item.depot = $3)
  AND (item.due_on IS NULL OR item.due_on < $2::date OR item.due_holds_through IS NOT NULL)
  AND ($4::boolean OR item.id IN (SELECT item_id FROM booking WHERE period && daterange($1::date, $2::date, '[]') AND (hold_until IS NULL OR hold_until > now())))
ORDER BY item.id;
SELECT item_id AS item, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", CASE WHEN holder_kind = 'tour' THEN holder_id END AS tour, holder_kind = 'hold' AS "isHold"
FROM booking WHERE item_id = ANY($1) AND period && daterange($2::date, $3::date, '[]') AND (hold_until IS NULL OR hold_until > now()) ORDER BY lower(period), tour_name;
SELECT wanted.item, made.examinations FROM unnest($1::text[]) wanted (item), LATERAL
  (SELECT jsonb_agg((CASE WHEN data ? 'answers' THEN jsonb_set(data, '{answers}', (SELECT coalesce(jsonb_agg(day), '[]') FROM jsonb_array_elements(data->'answers') day
  WHERE NOT EXISTS (SELECT FROM incident later WHERE later.item_id = examination.item_id AND later.on_day::text = day #>> '{}' AND later.after_examination >= examination.id)))
  ELSE data END) - '{particulars,examiner,report,reportFile}'::text[] ORDER BY id) AS examinations
   FROM (SELECT id, item_id, data, max(data->>'on') FILTER (WHERE data->>'outcome' = 'pass' AND NOT data ? 'satisfies') OVER () AS passed_on FROM examination
     WHERE item_id = wanted.item AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = examination.id)) examination
   WHERE passed_on IS NULL OR data->>'on' >= passed_on) made
WHERE made.examinations IS NOT NULL;
SELECT item_id AS item, jsonb_agg(jsonb_build_object('on', on_day, 'what', what) ORDER BY id) AS events FROM incident WHERE item_id = ANY($1) GROUP BY item_id;
SELECT data->'kinds' AS kinds, data->'intervals' AS intervals FROM rule WHERE kind = 'examination' AND is_accepted ORDER BY place;
SELECT id, on_day::text AS on, depot, tour_id AS tour, show_id AS show FROM visit
WHERE state IN ('possible', 'agreed') AND on_day BETWEEN $1::date - 1100 AND $2::date AND on_day >= $3::date AND ($4::text IS NULL OR depot IS NULL OR depot = $4)
ORDER BY on_day, id;
SELECT id, data->>'depot' AS depot, (SELECT jsonb_agg(jsonb_build_object('id', show->>'id', 'from', show->>'from', 'to', show->>'to') ORDER BY show->>'from')
  FROM jsonb_array_elements(data->'shows') show) AS shows
FROM tour WHERE prep_from <= $2::date AND return_to >= $1::date;
