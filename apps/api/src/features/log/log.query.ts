import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { isPlainDate } from '#kernel';
import type { Words } from '#words';
import { WORDS } from '../../platform/config/words.js';
import { BadInputError } from '../../platform/faults/fault.js';
import { connectionOf, pageSize, readCursor } from '../../platform/graphql/paging.js';
import { type LogHead, readLogHead } from '../../platform/seal/log-head.reader.js';
import type { LogLine, LogLineConnection, LogRowChange } from './log.types.js';

export interface LogFilter {
  readonly item?: string | null | undefined;
  readonly tour?: string | null | undefined;
  readonly person?: string | null | undefined;
  /** YYYY-MM-DD, a day of `zone`. */
  readonly day?: string | null | undefined;
  /** IANA name; UTC where it is left out. */
  readonly zone?: string | null | undefined;
}

const mostRows = 20;

/** Acts that concern something: said of it, or with a row of it among what they changed. */
const concerned = (column: string, place: string) => `(${place}::text IS NULL OR line.id IN (
    SELECT id FROM event WHERE ${column} = ${place}
    UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.${column} = ${place} AND said.${column} IS NULL AND said.what <> 'row'))`;

const page = `SELECT line.id, line.at, line.done_at AS "doneAt", line.who, line.person_id AS "personId", line.via, line.what, line.sentence,
  line.item_id AS "itemId", line.tour_id AS "tourId", tour.name AS "tourName", line.show_id AS "showId", line.row_table AS "rowTable", line.row_key AS "rowKey",
  line.before, line.after, changed.rows, changed.count
FROM (SELECT * FROM event line WHERE line.what <> 'row' AND ${concerned('item_id', '$1')} AND ${concerned('tour_id', '$2')}
    AND ($3::uuid IS NULL OR line.id IN (SELECT id FROM event WHERE person_id = $3
      UNION SELECT said.id FROM event said JOIN event changed ON changed.act = said.act WHERE changed.row_table = 'account' AND changed.row_key = $3::text AND said.what <> 'row'))
    AND ($4::date IS NULL OR line.at >= $4::date::timestamp AT TIME ZONE $5 AND line.at < ($4::date + 1)::timestamp AT TIME ZONE $5)
    AND ($6::bigint IS NULL OR line.id < $6) ORDER BY line.id DESC LIMIT $7) line
LEFT JOIN tour ON tour.id = line.tour_id
CROSS JOIN LATERAL (SELECT coalesce(jsonb_agg(jsonb_build_object('table', row_table, 'key', row_key, 'before', before, 'after', after) ORDER BY id) FILTER (WHERE number <= ${mostRows}), '[]') AS rows,
  count(*)::int AS count FROM (SELECT row.*, row_number() OVER (ORDER BY row.id) AS number FROM event row WHERE row.act = line.act AND row.what = 'row'
    AND (line.item_id IS NULL OR row.item_id IS NULL OR row.item_id = line.item_id)) row) changed
ORDER BY line.id DESC`;

interface PageRow extends Omit<LogLine, 'at' | 'doneAt' | 'moreRows'> {
  readonly at: Date;
  readonly doneAt: Date | null;
  readonly what: string;
  readonly rowTable: string | null;
  readonly rowKey: string | null;
  readonly before: object | null;
  readonly after: object | null;
  readonly count: number;
}

/** Who did what and when, newest first: by item, tour, person and day. */
@Injectable()
export class LogQuery {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  async lines(filter: LogFilter, first?: number | null, after?: string | null): Promise<LogLineConnection> {
    const size = pageSize(first);
    const seen = readCursor(after) ?? null;
    if (seen !== null && !/^\d{1,18}$/.test(seen))
      throw new BadInputError([{ field: 'after', value: String(after).slice(0, 80), wanted: 'a cursor of an earlier page' }]);
    const rows: PageRow[] = await this.dataSource.query(page, [...valuesOf(filter), seen, size + 1]);
    return connectionOf(
      rows,
      size,
      (row) => row.id,
      (row) => this.view(row),
    );
  }

  head(): Promise<LogHead | undefined> {
    return readLogHead((sql, values) => this.dataSource.query(sql, values));
  }

  private view(row: PageRow): LogLine {
    const { at, doneAt, what, rowTable, rowKey, before, after, count, rows, ...line } = row;
    const own: LogRowChange[] = rowTable === null || what === 'reworded' ? [] : [{ table: rowTable, key: rowKey, before, after }];
    return {
      ...line,
      who: what === 'reworded' ? this.words.log.program : line.who,
      sentence:
        what === 'outside'
          ? this.words.log.outside
          : what === 'reworded'
            ? this.words.log.reworded(Object.keys(after ?? {}).length)
            : line.sentence,
      at: at.toISOString(),
      doneAt: doneAt?.toISOString() ?? null,
      rows: [...own, ...rows],
      moreRows: Math.max(0, count - mostRows),
    };
  }
}

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

function valuesOf({ item, tour, person, day, zone }: LogFilter): (string | null)[] {
  if (person && !uuid.test(person))
    throw new BadInputError([{ field: 'person', value: person.slice(0, 80), wanted: 'the id of a person' }]);
  if (day && !isPlainDate(day)) throw new BadInputError([{ field: 'day', value: day.slice(0, 80), wanted: 'a day as YYYY-MM-DD' }]);
  return [item || null, tour || null, person || null, day || null, zoneOf(zone)];
}

function zoneOf(zone: string | null | undefined): string {
  if (!zone) return 'UTC';
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone;
  } catch {
    throw new BadInputError([
      { field: 'zone', value: zone.slice(0, 80), wanted: 'a zone of the time zone database, such as Europe/London' },
    ]);
  }
}
