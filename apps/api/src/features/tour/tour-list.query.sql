-- a page
SELECT id, name, prep_from::text AS "prepFrom", return_to::text AS "returnTo", jsonb_array_length(data->'shows') AS shows,
  (SELECT jsonb_agg(jsonb_build_object('showId', show->>'id', 'name', show->>'name')) FROM jsonb_array_elements(data->'shows') show) AS "showNames"
FROM tour WHERE removed_at IS NULL AND ($1::date IS NULL OR (prep_from, id) < ($1, $2)) ORDER BY prep_from DESC, id DESC LIMIT $3;
