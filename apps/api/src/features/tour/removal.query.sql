-- removed tours
SELECT tour.id, tour.name, prep_from::text AS "prepFrom", return_to::text AS "returnTo", version,
  to_char(removed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD') AS "removedOn", account.name AS "removedBy",
  (SELECT count(*)::int FROM pack_plan WHERE tour_id = tour.id AND state <> 'draft') AS revisions
FROM tour LEFT JOIN account ON account.id = removed_by_id WHERE removed_at IS NOT NULL ORDER BY removed_at DESC, tour.id LIMIT 200;

-- removed shows
SELECT show_id AS "showId", data->>'name' AS name, data->>'from' AS "from", data->>'to' AS "to",
  to_char(removed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD') AS "removedOn", account.name AS "removedBy",
  ARRAY(SELECT revision FROM pack_plan WHERE tour_id = gone.tour_id AND show_id = gone.show_id AND state <> 'draft' ORDER BY made_at) AS revisions
FROM removed_show gone LEFT JOIN account ON account.id = removed_by_id WHERE tour_id = $1 ORDER BY data->>'from', show_id;

-- what a removal takes along
SELECT "TourRow"."id" AS "TourRow_id", "TourRow"."name" AS "TourRow_name", "TourRow"."prep_from" AS "TourRow_prep_from", "TourRow"."return_to" AS "TourRow_return_to", "TourRow"."version" AS "TourRow_version", "TourRow"."data" AS "TourRow_data", "TourRow"."written" AS "TourRow_written", "TourRow"."removed_at" AS "TourRow_removed_at", "TourRow"."removed_by_id" AS "TourRow_removed_by_id" FROM "tour" "TourRow" WHERE (("TourRow"."id" = $1)) LIMIT 1;
SELECT DISTINCT name, time_zone AS zone FROM venue;
SELECT count(*)::int AS shows, coalesce(sum(jsonb_array_length(show->'hangs')), 0)::int AS hangs,
  coalesce(sum((SELECT count(*) FROM jsonb_path_query(show, '$.hangs[*].boxes[*]'))), 0)::int AS boxes,
  (SELECT count(*)::int FROM pack_plan WHERE tour_id = $1 AND state = 'draft' AND ($2::text IS NULL OR show_id = $2)) AS drafts,
  (SELECT count(*)::int FROM pack_plan WHERE tour_id = $1 AND state <> 'draft' AND ($2::text IS NULL OR show_id = $2)) AS revisions,
  ARRAY(SELECT plan #>> '{show,name}' || ', revision ' || revision FROM pack_plan
    WHERE tour_id = $1 AND state = 'released' AND ($2::text IS NULL OR show_id = $2) ORDER BY plan #>> '{show,from}') AS "inForce",
  (SELECT count(*)::int FROM booking WHERE holder_kind = 'tour' AND holder_id = $1 AND upper(period) > $3::date AND ($2::text IS NULL OR NOT EXISTS (
    SELECT FROM pack_plan, jsonb_array_elements(plan->'uses') used WHERE tour_id = $1 AND state = 'released' AND show_id <> $2 AND used->>'item' = booking.item_id))) AS "givenBack"
FROM tour, jsonb_array_elements(data->'shows') show WHERE tour.id = $1 AND ($2::text IS NULL OR show->>'id' = $2);
