-- a page
SELECT line.id, line.act, line.at, line.done_at AS "doneAt", line.who, line.person_id AS "personId", line.via, line.what, line.sentence,
  line.item_id AS "itemId", line.tour_id AS "tourId", tour.name AS "tourName", line.show_id AS "showId", line.row_table AS "rowTable", line.row_key AS "rowKey",
  line.before, line.after, changed.rows, changed.count
FROM (SELECT * FROM event line WHERE line.what <> 'row' AND ($1::text IS NULL OR line.id IN (
    SELECT id FROM event WHERE item_id = $1
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.item_id = $1 AND said.item_id IS NULL AND said.what <> 'row')) AND ($2::text IS NULL OR line.id IN (
    SELECT id FROM event WHERE tour_id = $2
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.tour_id = $2 AND said.tour_id IS NULL AND said.what <> 'row'))
    AND ($3::uuid IS NULL OR line.id IN (SELECT id FROM event WHERE person_id = $3
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = $3::text AND said.what <> 'row'))
    AND ($4::date IS NULL OR line.at >= $4::date::timestamp AT TIME ZONE $5 AND line.at < ($4::date + 1)::timestamp AT TIME ZONE $5) AND ($8::uuid IS NULL OR line.act = $8) AND ($6::bigint IS NULL OR line.id < $6) ORDER BY line.id DESC LIMIT $7) line
LEFT JOIN tour ON tour.id = line.tour_id
CROSS JOIN LATERAL (SELECT coalesce(jsonb_agg(jsonb_build_object('table', row_table, 'key', row_key, 'before', before, 'after', after) ORDER BY id) FILTER (WHERE number <= 20), '[]') AS rows,
  count(*)::int AS count FROM (SELECT row.*, row_number() OVER (ORDER BY row.id) AS number FROM (
    SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND line.item_id IS NULL UNION ALL SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND row.item_id = line.item_id UNION ALL SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND line.item_id IS NOT NULL AND row.item_id IS NULL) row) row) changed ORDER BY line.id DESC;

-- a page of acts
WITH RECURSIVE head (id, act, number) AS (
  (SELECT line.id, line.act, 1 FROM event line WHERE line.what <> 'row' AND ($1::text IS NULL OR line.id IN (
    SELECT id FROM event WHERE item_id = $1
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.item_id = $1 AND said.item_id IS NULL AND said.what <> 'row')) AND ($2::text IS NULL OR line.id IN (
    SELECT id FROM event WHERE tour_id = $2
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.tour_id = $2 AND said.tour_id IS NULL AND said.what <> 'row'))
    AND ($3::uuid IS NULL OR line.id IN (SELECT id FROM event WHERE person_id = $3
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = $3::text AND said.what <> 'row'))
    AND ($4::date IS NULL OR line.at >= $4::date::timestamp AT TIME ZONE $5 AND line.at < ($4::date + 1)::timestamp AT TIME ZONE $5)
    AND ($6::bigint IS NULL OR line.id < $6 AND line.act <> (SELECT act FROM event WHERE id = $6)) AND line.id = (SELECT newest.id FROM event newest WHERE newest.act = line.act AND newest.what <> 'row' AND ($1::text IS NULL OR newest.id IN (
    SELECT id FROM event WHERE item_id = $1
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.item_id = $1 AND said.item_id IS NULL AND said.what <> 'row')) AND ($2::text IS NULL OR newest.id IN (
    SELECT id FROM event WHERE tour_id = $2
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.tour_id = $2 AND said.tour_id IS NULL AND said.what <> 'row'))
    AND ($3::uuid IS NULL OR newest.id IN (SELECT id FROM event WHERE person_id = $3
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = $3::text AND said.what <> 'row'))
    AND ($4::date IS NULL OR newest.at >= $4::date::timestamp AT TIME ZONE $5 AND newest.at < ($4::date + 1)::timestamp AT TIME ZONE $5) ORDER BY newest.id DESC LIMIT 1) ORDER BY line.id DESC LIMIT 1)
  UNION ALL
  SELECT next.id, next.act, head.number + 1 FROM head CROSS JOIN LATERAL (
    SELECT line.id, line.act FROM event line WHERE line.id < head.id AND line.act <> head.act AND line.what <> 'row' AND ($1::text IS NULL OR line.id IN (
    SELECT id FROM event WHERE item_id = $1
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.item_id = $1 AND said.item_id IS NULL AND said.what <> 'row')) AND ($2::text IS NULL OR line.id IN (
    SELECT id FROM event WHERE tour_id = $2
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.tour_id = $2 AND said.tour_id IS NULL AND said.what <> 'row'))
    AND ($3::uuid IS NULL OR line.id IN (SELECT id FROM event WHERE person_id = $3
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = $3::text AND said.what <> 'row'))
    AND ($4::date IS NULL OR line.at >= $4::date::timestamp AT TIME ZONE $5 AND line.at < ($4::date + 1)::timestamp AT TIME ZONE $5) AND line.id = (SELECT newest.id FROM event newest WHERE newest.act = line.act AND newest.what <> 'row' AND ($1::text IS NULL OR newest.id IN (
    SELECT id FROM event WHERE item_id = $1
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.item_id = $1 AND said.item_id IS NULL AND said.what <> 'row')) AND ($2::text IS NULL OR newest.id IN (
    SELECT id FROM event WHERE tour_id = $2
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.tour_id = $2 AND said.tour_id IS NULL AND said.what <> 'row'))
    AND ($3::uuid IS NULL OR newest.id IN (SELECT id FROM event WHERE person_id = $3
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = $3::text AND said.what <> 'row'))
    AND ($4::date IS NULL OR newest.at >= $4::date::timestamp AT TIME ZONE $5 AND newest.at < ($4::date + 1)::timestamp AT TIME ZONE $5) ORDER BY newest.id DESC LIMIT 1) ORDER BY line.id DESC LIMIT 1) next
  WHERE head.number < $7)
SELECT head.id AS head, counted.lines, line.id, line.act, line.at, line.done_at AS "doneAt", line.who, line.person_id AS "personId", line.via, line.what, line.sentence,
  line.item_id AS "itemId", line.tour_id AS "tourId", tour.name AS "tourName", line.show_id AS "showId", line.row_table AS "rowTable", line.row_key AS "rowKey",
  line.before, line.after, changed.rows, changed.count
FROM head
CROSS JOIN LATERAL (SELECT count(*)::int AS lines FROM (SELECT FROM event one WHERE one.act = head.act AND one.what <> 'row' AND ($1::text IS NULL OR one.id IN (
    SELECT id FROM event WHERE item_id = $1
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.item_id = $1 AND said.item_id IS NULL AND said.what <> 'row')) AND ($2::text IS NULL OR one.id IN (
    SELECT id FROM event WHERE tour_id = $2
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.tour_id = $2 AND said.tour_id IS NULL AND said.what <> 'row'))
    AND ($3::uuid IS NULL OR one.id IN (SELECT id FROM event WHERE person_id = $3
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = $3::text AND said.what <> 'row'))
    AND ($4::date IS NULL OR one.at >= $4::date::timestamp AT TIME ZONE $5 AND one.at < ($4::date + 1)::timestamp AT TIME ZONE $5) LIMIT 10001) one) counted
JOIN event line ON line.id = coalesce(
  (SELECT whole.id FROM event whole WHERE whole.act = head.act AND whole.item_id IS NULL AND whole.what <> 'row' AND ($1::text IS NULL OR whole.id IN (
    SELECT id FROM event WHERE item_id = $1
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.item_id = $1 AND said.item_id IS NULL AND said.what <> 'row')) AND ($2::text IS NULL OR whole.id IN (
    SELECT id FROM event WHERE tour_id = $2
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.tour_id = $2 AND said.tour_id IS NULL AND said.what <> 'row'))
    AND ($3::uuid IS NULL OR whole.id IN (SELECT id FROM event WHERE person_id = $3
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = $3::text AND said.what <> 'row'))
    AND ($4::date IS NULL OR whole.at >= $4::date::timestamp AT TIME ZONE $5 AND whole.at < ($4::date + 1)::timestamp AT TIME ZONE $5) ORDER BY whole.id LIMIT 1), head.id)
LEFT JOIN tour ON tour.id = line.tour_id
CROSS JOIN LATERAL (SELECT coalesce(jsonb_agg(jsonb_build_object('table', row_table, 'key', row_key, 'before', before, 'after', after) ORDER BY id) FILTER (WHERE number <= 20), '[]') AS rows,
  count(*)::int AS count FROM (SELECT row.*, row_number() OVER (ORDER BY row.id) AS number FROM (
    SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND line.item_id IS NULL UNION ALL SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND row.item_id = line.item_id UNION ALL SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND line.item_id IS NOT NULL AND row.item_id IS NULL) row) row) changed ORDER BY head.id DESC;
