-- notes of a role
SELECT tour.id AS "tourId", show->>'id' AS "showId", show->>'name' AS name, show->>'from' AS "from", show->>'to' AS "to", coalesce((SELECT venue.time_zone FROM show_venue JOIN venue ON venue.id = show_venue.venue_id
  WHERE show_venue.tour_id = tour.id AND show_venue.show_id = show->>'id'), show->>'timeZone') AS zone,
  plan.id AS "planId", plan.state, plan.revision,
  coalesce((SELECT jsonb_agg(each) FROM plan_part, jsonb_array_elements(data) each WHERE plan_id = plan.id AND part = 'findings' AND each->>'weight' <> 'agrees'), '[]') AS findings,
  coalesce((SELECT jsonb_array_length(data->'loads') FROM plan_part WHERE plan_id = plan.id AND part = 'carts'), 0) AS loads,
  (SELECT count(*)::int FROM cart_check WHERE plan_id = plan.id) AS confirmed
FROM tour CROSS JOIN LATERAL jsonb_array_elements(tour.data->'shows') WITH ORDINALITY listed (show, number)
LEFT JOIN LATERAL (SELECT id, state, revision FROM pack_plan WHERE tour_id = tour.id AND show_id = show->>'id' AND state <> 'superseded'
  ORDER BY (state = 'released') DESC LIMIT 1) plan ON true
WHERE tour.removed_at IS NULL AND tour.return_to >= $1::date AND show->>'to' >= $1::text ORDER BY tour.prep_from, tour.id, number;
SELECT plan.id, show->>'to' AS "to", coalesce((SELECT venue.time_zone FROM show_venue JOIN venue ON venue.id = show_venue.venue_id
  WHERE show_venue.tour_id = tour.id AND show_venue.show_id = show->>'id'), show->>'timeZone') AS zone,
  EXISTS (SELECT FROM floor_record WHERE tour_id = plan.tour_id AND floor_record.show_id = plan.show_id AND kind = 'returned') AS "isComingBack"
FROM pack_plan plan JOIN tour ON tour.id = plan.tour_id CROSS JOIN LATERAL jsonb_array_elements(tour.data->'shows') show
WHERE plan.id = ANY($1) AND plan.state <> 'superseded' AND show->>'id' = plan.show_id;
SELECT plan.id, plan.tour_id AS "tourId", plan.show_id AS "showId", kept.changes, kept.floor_fits AS fits,
  kept.cluster IS NOT DISTINCT FROM this_cluster() AND NOT EXISTS (SELECT FROM jsonb_array_elements(kept.changes) each WHERE jsonb_typeof(each) = 'array') AND (kept.holds_until IS NULL OR kept.holds_until > now())
    AND NOT EXISTS (SELECT FROM input_change line WHERE line.written_in >= pg_snapshot_xmin(kept.seen) AND CASE line.kind WHEN 'forgotten' THEN line.written_in > pg_snapshot_xmin(kept.seen)
  ELSE NOT pg_visible_in_snapshot(line.written_in, kept.seen) AND (line.kind <> 'tour' OR line.key = plan.tour_id) END) AS "isFresh"
FROM pack_plan plan LEFT JOIN plan_freshness kept ON kept.plan_id = plan.id WHERE plan.id = ANY($1) AND plan.state <> 'superseded';
SELECT act.id, act.plan_id AS "planId", act.tour_id AS "tourId", act.show_id AS "showId", act.what, act.words, act.hang, act.items, act.done_at AS "doneAt",
  act.told_at AS "toldAt", account.name AS who,
  answer.because, answer.answered_at AS "answeredAt", officer.name AS "answeredBy", instead.name AS "answeredFor"
  FROM barred_act act LEFT JOIN account ON account.id = act.done_by_id LEFT JOIN barred_act_answer answer ON answer.act_id = act.id
  LEFT JOIN account officer ON officer.id = answer.answered_by_id LEFT JOIN account instead ON instead.id = answer.answered_for_id JOIN unnest($1::text[], $2::text[]) AS wanted (tour, show) ON act.tour_id = wanted.tour AND act.show_id = wanted.show ORDER BY act.id;
