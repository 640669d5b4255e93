-- visits of a season
SELECT visit.id, visit.on_day::text AS "onDay", visit.depot, visit.tour_id AS "tourId", visit.show_id AS "showId",
  coalesce(visit.depot, concat_ws(', ', tour.name, coalesce((SELECT each->>'name' FROM jsonb_array_elements(tour.data->'shows') each WHERE each->>'id' = visit.show_id), visit.show_id), (SELECT each->>'venue' FROM jsonb_array_elements(tour.data->'shows') each WHERE each->>'id' = visit.show_id))) AS "placeName", visit.state, visit.remark, visit.list,
  (SELECT count(*)::int FROM visit_line WHERE visit_id = visit.id) AS entered, visit.version FROM visit LEFT JOIN tour ON tour.id = visit.tour_id
WHERE on_day BETWEEN $1::date AND $2::date AND ($3::text IS NULL OR visit.depot IS NULL OR visit.depot = $3) ORDER BY on_day, visit.depot NULLS LAST, visit.id LIMIT 1000;

-- shows of a season
SELECT tour.id AS "tourId", each->>'id' AS "showId", concat_ws(', ', tour.name, each->>'name', each->>'venue') AS name, each->>'from' AS "from", each->>'to' AS "to"
FROM tour, jsonb_array_elements(data->'shows') each WHERE removed_at IS NULL AND prep_from <= $2::date AND return_to >= $1::date AND (each->>'from')::date <= $2::date AND (each->>'to')::date >= $1::date ORDER BY each->>'from', tour.id LIMIT 1000;
