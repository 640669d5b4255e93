/** Rows of what an act changed that are told with a line of it. */
export const mostRows = 20;
/** Lines of an act are counted so far: beyond it "more than". */
export const mostCounted = 10_000;

/** What is looked for, read: null is anything. */
export interface LookedFor {
  readonly item: string | null;
  readonly tour: string | null;
  readonly person: string | null;
  /** YYYY-MM-DD, a day of `zone`. */
  readonly day: string | null;
  readonly zone: string;
  readonly act: string | null;
}

export interface Statement {
  readonly text: string;
  readonly values: readonly unknown[];
}

/** Its conditions are those that were asked for alone, so that each is found by its index. */
class Asked {
  readonly values: unknown[] = [];

  constructor(private readonly of: LookedFor) {}

  put(value: unknown): string {
    return `$${this.values.push(value)}`;
  }

  get isAnything(): boolean {
    const { item, tour, person, day, act } = this.of;
    return [item, tour, person, day, act].every((each) => each === null);
  }

  /** Lines that are looked for. */
  lines(line: string): string {
    const { item, tour, person, day, zone, act } = this.of;
    return [
      `${line}.what <> 'row'`,
      ...(act === null ? [] : [`${line}.act = ${this.put(act)}::uuid`]),
      ...(item === null ? [] : [this.concerned(line, 'item_id', this.put(item))]),
      ...(tour === null ? [] : [this.concerned(line, 'tour_id', this.put(tour))]),
      ...(person === null ? [] : [this.by(line, this.put(person))]),
      ...(day === null ? [] : [this.on(line, this.put(day), this.put(zone))]),
    ].join(' AND ');
  }

  /** Acts that concern something: said of it, or with a row of it among what they changed. */
  private concerned(line: string, column: string, place: string): string {
    return `${line}.id IN (SELECT id FROM event WHERE ${column} = ${place}
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.${column} = ${place} AND said.${column} IS NULL AND said.what <> 'row')`;
  }

  private by(line: string, person: string): string {
    return `${line}.id IN (SELECT id FROM event WHERE person_id = ${person}::uuid
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = ${person}::text AND said.what <> 'row')`;
  }

  private on(line: string, day: string, zone: string): string {
    return `${line}.at >= ${day}::date::timestamp AT TIME ZONE ${zone} AND ${line}.at < (${day}::date + 1)::timestamp AT TIME ZONE ${zone}`;
  }
}

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

/** A page of lines, newest first; `seen`: the id of the last one of the page before. */
export function pageOfLines(of: LookedFor, seen: string | null, count: number): Statement {
  const asked = new Asked(of);
  const before = seen === null ? '' : ` AND line.id < ${asked.put(seen)}::bigint`;
  const text = `SELECT ${told}
FROM (SELECT * FROM event line WHERE ${asked.lines('line')}${before} ORDER BY line.id DESC LIMIT ${asked.put(count)}) line
${besides} ORDER BY line.id DESC`;
  return { text, values: asked.values };
}

/**
 * A page of acts, newest first; `seen`: the newest line of the last one of the page before. An act is told by what was said of no single item, where
 * there is such a line, else by its newest.
 */
export function pageOfActs(of: LookedFor, seen: string | null, count: number): Statement {
  const asked = new Asked(of);
  const heads = asked.isAnything ? headsOfAll(asked, seen, count) : headsOfSome(asked, seen, count);
  const text = `${heads}
SELECT head.id AS head, head.lines, ${told}
FROM head JOIN event line ON line.id = head.told_by
${besides} ORDER BY head.id DESC`;
  return { text, values: asked.values };
}

/** What is looked for is gathered first. */
function headsOfSome(asked: Asked, seen: string | null, count: number): string {
  return `WITH head AS MATERIALIZED (SELECT max(line.id) AS id, coalesce(min(line.id) FILTER (WHERE line.item_id IS NULL), max(line.id)) AS told_by, count(*)::int AS lines
  FROM event line WHERE ${asked.lines('line')} GROUP BY line.act${seen === null ? '' : ` HAVING max(line.id) < ${asked.put(seen)}::bigint`} ORDER BY 1 DESC LIMIT ${asked.put(count)})`;
}

/** Of the whole log: from the newest line of an act to that of the next, past the lines of the first, however many it has. */
function headsOfAll(asked: Asked, seen: string | null, count: number): string {
  const isNewest = `line.id = (SELECT newest.id FROM event newest WHERE newest.act = line.act AND newest.what <> 'row' ORDER BY newest.id DESC LIMIT 1)`;
  const id = seen === null ? '' : `${asked.put(seen)}::bigint`;
  const before = seen === null ? '' : ` AND line.id < ${id} AND line.act <> (SELECT act FROM event WHERE id = ${id})`;
  return `WITH RECURSIVE newest (id, act, number) AS (
  (SELECT line.id, line.act, 1 FROM event line WHERE line.what <> 'row'${before} AND ${isNewest} ORDER BY line.id DESC LIMIT 1)
  UNION ALL
  SELECT next.id, next.act, newest.number + 1 FROM newest CROSS JOIN LATERAL (
    SELECT line.id, line.act FROM event line WHERE line.id < newest.id AND line.act <> newest.act AND line.what <> 'row' AND ${isNewest} ORDER BY line.id DESC LIMIT 1) next
  WHERE newest.number < ${asked.put(count)}),
head AS MATERIALIZED (SELECT newest.id, counted.lines,
  coalesce((SELECT whole.id FROM event whole WHERE whole.act = newest.act AND whole.item_id IS NULL AND whole.what <> 'row' ORDER BY whole.id LIMIT 1), newest.id) AS told_by
  FROM newest CROSS JOIN LATERAL (SELECT count(*)::int AS lines FROM (
    SELECT FROM event one WHERE one.act = newest.act AND one.what <> 'row' LIMIT ${mostCounted + 1}) one) counted)`;
}
