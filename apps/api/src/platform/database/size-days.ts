import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';

/** Days that are kept: a little over ten years. */
const daysKept = 3_700;

/** How large the database is, kept once a day: the first look of a day counts, by the clock of the database. */
@Injectable()
export class SizeDays {
  constructor(private readonly dataSource: DataSource) {}

  async keep(): Promise<void> {
    await this.dataSource.query(
      `INSERT INTO size_day (day, bytes, tables)
       SELECT current_date, pg_database_size(current_database()),
         (SELECT jsonb_object_agg(relname, pg_total_relation_size(oid)) FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p'))
       WHERE NOT EXISTS (SELECT FROM size_day WHERE day = current_date)
       ON CONFLICT (day) DO NOTHING`,
    );
    await this.dataSource.query(`DELETE FROM size_day WHERE day < current_date - ${daysKept}`);
  }

  /** The days of the last month, and one of each month before, the newest first. */
  async days(): Promise<readonly SizeDay[]> {
    return this.dataSource.query(
      `SELECT day::text AS day, bytes::float AS bytes FROM size_day
       WHERE day > current_date - 31 OR day IN (SELECT min(day) FROM size_day GROUP BY date_trunc('month', day)) ORDER BY day DESC`,
    );
  }

  /** By table, the bytes of the oldest day within the last thirty; empty where only today is known. */
  async monthAgo(): Promise<{ readonly day: string; readonly tables: Readonly<Record<string, number>> } | undefined> {
    const [row] = await this.dataSource.query<{ day: string; tables: Readonly<Record<string, number>> }[]>(
      `SELECT day::text AS day, tables FROM size_day WHERE day >= current_date - 30 AND day < current_date ORDER BY day LIMIT 1`,
    );
    return row;
  }
}

export interface SizeDay {
  readonly day: string;
  readonly bytes: number;
}
