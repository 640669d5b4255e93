-- head
SELECT tour.name AS "tourName", show->>'name' AS name,
  (SELECT coalesce(jsonb_agg(jsonb_build_object('id', id, 'state', state, 'revision', revision, 'madeAt', made_at, 'madeBy', made_by,
     'releasedAt', released_at, 'releasedBy', released_by, 'releasedDespite', released_despite) ORDER BY made_at), '[]')
   FROM pack_plan WHERE tour_id = tour.id AND show_id = $2) AS plans
FROM tour, jsonb_array_elements(tour.data->'shows') show WHERE tour.id = $1 AND show->>'id' = $2;

-- whether a plan is stale
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

-- version
SELECT concat_ws('.', tour.version,
  (SELECT md5(string_agg(id::text || state, ' ' ORDER BY id)) FROM pack_plan WHERE tour_id = tour.id AND show_id = $2 AND state <> 'superseded'),
  (SELECT count(*) || '-' || coalesce(extract(epoch FROM max(ticked_at))::text, '') FROM tick WHERE plan_id IN (SELECT id FROM pack_plan WHERE tour_id = tour.id AND show_id = $2)),
  (SELECT count(*) || '-' || coalesce(extract(epoch FROM max(checked_at))::text, '') FROM cart_check WHERE plan_id IN (SELECT id FROM pack_plan WHERE tour_id = tour.id AND show_id = $2))
) AS version FROM tour WHERE tour.id = $1;

-- states of the shows of a tour
SELECT DISTINCT ON (plan.show_id) plan.show_id AS "showId", plan.state, plan.revision,
  (SELECT count(*)::int FROM jsonb_array_elements(findings.data) each WHERE each->>'weight' = 'stop') AS stops,
  (SELECT count(*)::int FROM jsonb_array_elements(findings.data) each WHERE each->>'weight' = 'look') AS looks
FROM pack_plan plan JOIN plan_part findings ON findings.plan_id = plan.id AND findings.part = 'findings'
WHERE plan.tour_id = $1 AND plan.state <> 'superseded' ORDER BY plan.show_id, (plan.state = 'released') DESC;
