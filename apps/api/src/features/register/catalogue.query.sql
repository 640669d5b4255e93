-- models
SELECT model.kind, model.model, model.data, coalesce(held.items, 0)::int AS "itemCount"
FROM model LEFT JOIN (SELECT model, count(*) AS items FROM item GROUP BY model) held ON held.model = model.model
WHERE $1::text IS NULL OR model.kind = $1 ORDER BY model.kind, model.place;

-- rules
SELECT data FROM rule WHERE kind = $1 ORDER BY place;
