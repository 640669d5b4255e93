import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { isPlainDate } from '#kernel';
import type { Words } from '#words';
import { WORDS } from '../../platform/config/words.js';
import { BadInputError } from '../../platform/faults/fault.js';
import { connectionOf, pageSize, readCursor } from '../../platform/graphql/paging.js';
import { type LogHead, readLogHead } from '../../platform/seal/log-head.reader.js';
import { type LookedFor, type Statement, mostCounted, mostRows, pageOfActs, pageOfLines } from './log-statements.js';
import type { LogActConnection, LogLine, LogLineConnection, LogRowChange } from './log.types.js';

export interface LogFilter {
  readonly item?: string | null | undefined;
  readonly tour?: string | null | undefined;
  readonly person?: string | null | undefined;
  /** YYYY-MM-DD, a day of `zone`. */
  readonly day?: string | null | undefined;
  /** IANA name; UTC where it is left out. */
  readonly zone?: string | null | undefined;
  /** Lines of one act. */
  readonly act?: string | null | undefined;
}

interface PageRow extends Omit<LogLine, 'at' | 'doneAt' | 'moreRows'> {
  readonly at: Date;
  readonly doneAt: Date | null;
  readonly what: string;
  readonly rowTable: string | null;
  readonly rowKey: string | null;
  readonly before: object | null;
  readonly after: object | null;
  readonly count: number;
  readonly act: string;
}

interface ActRow extends PageRow {
  readonly head: string;
  readonly lines: number;
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
    const rows = await this.ask<PageRow>(pageOfLines(lookedFor(filter), readSeen(after), size + 1));
    return connectionOf(
      rows,
      size,
      (row) => row.id,
      (row) => this.view(row),
    );
  }

  /** Lines of one act as one, with their number. */
  async acts(filter: LogFilter, first?: number | null, after?: string | null): Promise<LogActConnection> {
    const size = pageSize(first);
    const rows = await this.ask<ActRow>(pageOfActs(lookedFor(filter), readSeen(after), size + 1));
    return connectionOf(
      rows,
      size,
      (row) => row.head,
      ({ head: _head, lines, ...row }) => ({
        id: row.act,
        lines: Math.min(lines, mostCounted),
        isMoreThanCounted: lines > mostCounted,
        line: this.view(row),
      }),
    );
  }

  head(): Promise<LogHead | undefined> {
    return readLogHead((sql, values) => this.dataSource.query(sql, values));
  }

  private ask<Row>({ text, values }: Statement): Promise<Row[]> {
    return this.dataSource.query(text, [...values]);
  }

  private view(row: PageRow): LogLine {
    const { act: _act, at, doneAt, what, rowTable, rowKey, before, after, count, rows, ...line } = row;
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

function uuidOf(field: 'person' | 'act', value: string | null | undefined): string | null {
  if (!value) return null;
  if (!uuid.test(value))
    throw new BadInputError([{ field, value: value.slice(0, 80), wanted: field === 'act' ? 'the id of an act' : 'the id of a person' }]);
  return value;
}

function readSeen(after: string | null | undefined): string | null {
  const seen = readCursor(after) ?? null;
  if (seen !== null && !/^\d{1,18}$/.test(seen))
    throw new BadInputError([{ field: 'after', value: String(after).slice(0, 80), wanted: 'a cursor of an earlier page' }]);
  return seen;
}

function lookedFor({ item, tour, person, day, zone, act }: LogFilter): LookedFor {
  if (day && !isPlainDate(day)) throw new BadInputError([{ field: 'day', value: day.slice(0, 80), wanted: 'a day as YYYY-MM-DD' }]);
  return {
    item: item || null,
    tour: tour || null,
    person: uuidOf('person', person),
    day: day || null,
    zone: zoneOf(zone),
    act: uuidOf('act', act),
  };
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
