-- sheet
SELECT min(id) AS id FROM item WHERE kind = 'cart' GROUP BY model ORDER BY count(*) DESC, model COLLATE "C" LIMIT 1;
SELECT data, ARRAY(SELECT DISTINCT venue.country FROM show_venue JOIN venue ON venue.id = show_venue.venue_id
  WHERE tour_id = tour.id AND venue.country IS NOT NULL AND tour.data->'shows' @> jsonb_build_array(jsonb_build_object('id', show_id)) ORDER BY venue.country) AS countries, (SELECT coalesce(jsonb_agg(jsonb_build_object('place', place, 'rulesOf', rules_of, 'because', because, 'decidedBy', decided_by,
    'decidedOn', coalesce((SELECT max((decided_at AT TIME ZONE time_zone)::date) FROM venue WHERE name = tour.data->>'depot'), (decided_at AT TIME ZONE 'UTC')::date)::text) ORDER BY place), '[]')
  FROM (SELECT DISTINCT ON (place) * FROM place_answer WHERE tour_id = tour.id ORDER BY place, id DESC) newest WHERE rules_of IS NOT NULL) AS answers FROM tour WHERE id = ANY($1);
SELECT kind, CASE WHEN is_accepted THEN data ELSE data || '{"unaccepted": true}' END AS data FROM model ORDER BY place;
SELECT kind, CASE WHEN kind = 'load' AND NOT is_accepted THEN data || '{"unaccepted": true}' ELSE data END AS data
     FROM rule WHERE kind <> 'examination' OR is_accepted ORDER BY place;
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
SELECT show_id AS "showId", act FROM loading_act WHERE tour_id = $1 ORDER BY id;
SELECT id::text AS id, corrects::text AS corrects, key, counted_at AS "countedAt", sent, returned, damaged, uses
     FROM hardware_count ORDER BY hardware_count.id;
SELECT "HardwareCountRow"."id" AS "HardwareCountRow_id", "HardwareCountRow"."tour_id" AS "HardwareCountRow_tour_id", "HardwareCountRow"."shows" AS "HardwareCountRow_shows", "HardwareCountRow"."key" AS "HardwareCountRow_key", "HardwareCountRow"."sent" AS "HardwareCountRow_sent", "HardwareCountRow"."returned" AS "HardwareCountRow_returned", "HardwareCountRow"."damaged" AS "HardwareCountRow_damaged", "HardwareCountRow"."uses" AS "HardwareCountRow_uses", "HardwareCountRow"."corrects" AS "HardwareCountRow_corrects", "HardwareCountRow"."reason" AS "HardwareCountRow_reason", "HardwareCountRow"."counted_by" AS "HardwareCountRow_counted_by", "HardwareCountRow"."counted_by_id" AS "HardwareCountRow_counted_by_id", "HardwareCountRow"."counted_at" AS "HardwareCountRow_counted_at" FROM "hardware_count" "HardwareCountRow" WHERE (("HardwareCountRow"."tour_id" = $1)) ORDER BY "HardwareCountRow"."id" DESC;
