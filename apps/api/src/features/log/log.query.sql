-- a page
SELECT line.id, line.act, line.at, line.done_at AS "doneAt", line.who, line.person_id AS "personId", line.via, line.what, line.sentence,
  line.item_id AS "itemId", line.tour_id AS "tourId", tour.name AS "tourName", line.show_id AS "showId", line.row_table AS "rowTable", line.row_key AS "rowKey",
  line.before, line.after, changed.rows, changed.count
FROM (SELECT * FROM event line WHERE line.what <> 'row' AND line.id IN (SELECT id FROM event WHERE item_id = $1
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.item_id = $1 AND said.item_id IS NULL AND said.what <> 'row') AND line.at >= $2::date::timestamp AT TIME ZONE $3 AND line.at < ($2::date + 1)::timestamp AT TIME ZONE $3 ORDER BY line.id DESC LIMIT $4) line
LEFT JOIN tour ON tour.id = line.tour_id
CROSS JOIN LATERAL (SELECT coalesce(jsonb_agg(jsonb_build_object('table', row_table, 'key', row_key, 'before', before, 'after', after) ORDER BY id) FILTER (WHERE number <= 20), '[]') AS rows,
  count(*)::int AS count FROM (SELECT row.*, row_number() OVER (ORDER BY row.id) AS number FROM (
    SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND line.item_id IS NULL UNION ALL SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND row.item_id = line.item_id UNION ALL SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND line.item_id IS NOT NULL AND row.item_id IS NULL) row) row) changed ORDER BY line.id DESC;

-- a page of acts
WITH head AS MATERIALIZED (SELECT max(line.id) AS id, coalesce(min(line.id) FILTER (WHERE line.item_id IS NULL), max(line.id)) AS told_by, count(*)::int AS lines
  FROM event line WHERE line.what <> 'row' AND line.id IN (SELECT id FROM event WHERE item_id = $1
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.item_id = $1 AND said.item_id IS NULL AND said.what <> 'row') AND line.at >= $2::date::timestamp AT TIME ZONE $3 AND line.at < ($2::date + 1)::timestamp AT TIME ZONE $3 GROUP BY line.act ORDER BY 1 DESC LIMIT $4)
SELECT head.id AS head, head.lines, line.id, line.act, line.at, line.done_at AS "doneAt", line.who, line.person_id AS "personId", line.via, line.what, line.sentence,
  line.item_id AS "itemId", line.tour_id AS "tourId", tour.name AS "tourName", line.show_id AS "showId", line.row_table AS "rowTable", line.row_key AS "rowKey",
  line.before, line.after, changed.rows, changed.count
FROM head JOIN event line ON line.id = head.told_by
LEFT JOIN tour ON tour.id = line.tour_id
CROSS JOIN LATERAL (SELECT coalesce(jsonb_agg(jsonb_build_object('table', row_table, 'key', row_key, 'before', before, 'after', after) ORDER BY id) FILTER (WHERE number <= 20), '[]') AS rows,
  count(*)::int AS count FROM (SELECT row.*, row_number() OVER (ORDER BY row.id) AS number FROM (
    SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND line.item_id IS NULL UNION ALL SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND row.item_id = line.item_id UNION ALL SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND line.item_id IS NOT NULL AND row.item_id IS NULL) row) row) changed ORDER BY head.id DESC;
