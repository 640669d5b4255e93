import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';

/** What changed after a position; `*` stands for anything. The next position is where to go on reading. */
export interface Changes {
  readonly position: string;
  readonly topics: readonly string[];
}

export interface NumberedChanges {
  readonly position: string;
  readonly changes: readonly { readonly number: string; readonly topic: string }[];
}

/** How long a device may be away and still be told exactly what changed, hours. Rows are kept for twice as long. */
const hoursKept = 24;

/** Above this the list is longer than it is worth. */
const mostTopics = 200;

/**
 * The record of what changed, written by the tables' own triggers. A position is the oldest transaction that was still open when it was read
 * (PostgreSQL's `pg_snapshot_xmin`) with the second of reading: all changes of older transactions have been seen, so that reading on from there
 * misses nothing in whatever order transactions commit. What was seen already comes again while an older transaction is open.
 */
@Injectable()
export class ChangeLog {
  constructor(private readonly dataSource: DataSource) {}

  async position(): Promise<string> {
    const [row]: { position: string }[] = await this.dataSource.query(`SELECT ${position} AS position`);
    return row!.position;
  }

  async read(after: string): Promise<NumberedChanges> {
    const [row]: { position: string; changes: NumberedChanges['changes'] }[] = await this.dataSource.query(
      `SELECT ${position} AS position, coalesce((SELECT json_agg(json_build_object('number', number::text, 'topic', topic) ORDER BY number)
         FROM change WHERE transaction >= $1::xid8), '[]') AS changes`,
      [after.split('-')[0]],
    );
    return row!;
  }

  /** For a device that comes back: everything (`*`) where its position is none, of another database or too old. */
  async since(said: string | undefined): Promise<Changes> {
    if (said === undefined) return { position: await this.position(), topics: [] };
    const parts = /^(\d{1,18})-(\d{1,11})$/.exec(said);
    if (!parts) return { position: await this.position(), topics: ['*'] };
    const [row]: { position: string; topics: string[]; known: boolean }[] = await this.dataSource.query(
      `SELECT ${position} AS position,
         $1::xid8 <= pg_snapshot_xmax(pg_current_snapshot()) AND $2::bigint BETWEEN extract(epoch FROM now()) - $3 * 3600 AND extract(epoch FROM now()) + 60 AS known,
         ARRAY(SELECT DISTINCT topic FROM change WHERE transaction >= $1::xid8 ORDER BY topic LIMIT $4) AS topics`,
      [parts[1], parts[2], hoursKept, mostTopics + 1],
    );
    const { topics, known } = row!;
    return { position: row!.position, topics: known && topics.length <= mostTopics ? topics : ['*'] };
  }

  /** Removes what no device needs any more, a bounded number at a time; gives the number removed. */
  async forget(): Promise<number> {
    const [, removed]: [unknown, number] = await this.dataSource.query(
      `DELETE FROM change WHERE ctid = ANY (ARRAY(SELECT ctid FROM change WHERE at < now() - make_interval(hours => $1) LIMIT 5000))`,
      [2 * hoursKept],
    );
    return removed;
  }
}

const position = `pg_snapshot_xmin(pg_current_snapshot())::text || '-' || extract(epoch FROM now())::bigint`;
