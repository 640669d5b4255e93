-- list
SELECT holder_id AS id, min(tour_name) AS name, min(lower(period))::text AS "from", (max(upper(period)) - 1)::text AS "to", min(hold_until) AS until,
         array_agg(item_id ORDER BY item_id) AS items
       FROM booking WHERE holder_kind = 'hold' AND hold_until > $1 GROUP BY holder_id ORDER BY min(hold_until), min(tour_name), holder_id;
