/** Rows of what an act changed that are told with a line of it. */
export const mostRows = 20;
/** Lines of an act are counted so far: beyond it "more than". */
export const mostCounted = 10_000;

/** Acts that concern something: said of it, or with a row of it among what they changed. */
const concerned = (line: string, column: string, place: string) => `(${place}::text IS NULL OR ${line}.id IN (
    SELECT id FROM event WHERE ${column} = ${place}
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.${column} = ${place} AND said.${column} IS NULL AND said.what <> 'row'))`;

/** Lines that are looked for. $1 item, $2 tour, $3 person, $4 day in the zone $5. */
const lookedFor = (line: string) => `${line}.what <> 'row' AND ${concerned(line, 'item_id', '$1')} AND ${concerned(line, 'tour_id', '$2')}
    AND ($3::uuid IS NULL OR ${line}.id IN (SELECT id FROM event WHERE person_id = $3
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = $3::text AND said.what <> 'row'))
    AND ($4::date IS NULL OR ${line}.at >= $4::date::timestamp AT TIME ZONE $5 AND ${line}.at < ($4::date + 1)::timestamp AT TIME ZONE $5)`;

/** Fields of a line, and of what its act changed the rows that concern it. */
const told = `line.id, line.act, line.at, line.done_at AS "doneAt", line.who, line.person_id AS "personId", line.via, line.what, line.sentence,
  line.item_id AS "itemId", line.tour_id AS "tourId", tour.name AS "tourName", line.show_id AS "showId", line.row_table AS "rowTable", line.row_key AS "rowKey",
  line.before, line.after, changed.rows, changed.count`;
const rowsOf = (where: string) =>
  `SELECT row.id, row.row_table, row.row_key, row.before, row.after FROM event row WHERE row.act = line.act AND row.what = 'row' AND ${where}`;
const besides = `LEFT JOIN tour ON tour.id = line.tour_id
CROSS JOIN LATERAL (SELECT coalesce(jsonb_agg(jsonb_build_object('table', row_table, 'key', row_key, 'before', before, 'after', after) ORDER BY id) FILTER (WHERE number <= ${mostRows}), '[]') AS rows,
  count(*)::int AS count FROM (SELECT row.*, row_number() OVER (ORDER BY row.id) AS number FROM (
    ${rowsOf('line.item_id IS NULL')} UNION ALL ${rowsOf('row.item_id = line.item_id')} UNION ALL ${rowsOf('line.item_id IS NOT NULL AND row.item_id IS NULL')}) row) row) changed`;

/** A page of lines, newest first. $6 id of the last one seen, $7 how many, $8 an act. */
export const pageOfLines = `SELECT ${told}
FROM (SELECT * FROM event line WHERE ${lookedFor('line')} AND ($8::uuid IS NULL OR line.act = $8) AND ($6::bigint IS NULL OR line.id < $6) ORDER BY line.id DESC LIMIT $7) line
${besides} ORDER BY line.id DESC`;

/** The newest line looked for of its act, which stands for it: each act comes once. */
const isHead = `line.id = (SELECT newest.id FROM event newest WHERE newest.act = line.act AND ${lookedFor('newest')} ORDER BY newest.id DESC LIMIT 1)`;

/**
 * A page of acts, newest first: from head to head past the lines of an act, however many it has. $6 id of the last head seen, $7 how many. An act is told
 * by what was said of no single item, where there is such a line.
 */
export const pageOfActs = `WITH RECURSIVE head (id, act, number) AS (
  (SELECT line.id, line.act, 1 FROM event line WHERE ${lookedFor('line')}
    AND ($6::bigint IS NULL OR line.id < $6 AND line.act <> (SELECT act FROM event WHERE id = $6)) AND ${isHead} ORDER BY line.id DESC LIMIT 1)
  UNION ALL
  SELECT next.id, next.act, head.number + 1 FROM head CROSS JOIN LATERAL (
    SELECT line.id, line.act FROM event line WHERE line.id < head.id AND line.act <> head.act AND ${lookedFor('line')} AND ${isHead} ORDER BY line.id DESC LIMIT 1) next
  WHERE head.number < $7)
SELECT head.id AS head, counted.lines, ${told}
FROM head
CROSS JOIN LATERAL (SELECT count(*)::int AS lines FROM (SELECT FROM event one WHERE one.act = head.act AND ${lookedFor('one')} LIMIT ${mostCounted + 1}) one) counted
JOIN event line ON line.id = coalesce(
  (SELECT whole.id FROM event whole WHERE whole.act = head.act AND whole.item_id IS NULL AND ${lookedFor('whole')} ORDER BY whole.id LIMIT 1), head.id)
${besides} ORDER BY head.id DESC`;
