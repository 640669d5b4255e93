import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock } from '../config/config.js';
import type { RequestRow } from './rows.js';

/** How long the answer to a request is kept, days. A device that has held an action back for longer asks before it sends. */
const daysKept = 30;

/** What became of writes, by the id that their client gave them; everybody is told of his own only. */
@Injectable()
export class RequestLog {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async find(id: string, personId: string): Promise<'saved' | 'not saved' | undefined> {
    const rows: { state: RequestRow['state'] }[] = await this.dataSource.query(
      'SELECT state FROM request WHERE id = $1 AND step = 0 AND person_id = $2',
      [id, personId],
    );
    if (!rows[0]) return undefined;
    return rows[0].state === 'saved' ? 'saved' : 'not saved';
  }

  /** Waits for the end of what is under way under this id; what has not come by then will not be taken any more. */
  async giveUp(id: string, personId: string): Promise<void> {
    await this.dataSource.query(
      `INSERT INTO request (id, step, person_id, operation, values_hash, state, at) VALUES ($1, 0, $2, '', '', 'given up', $3) ON CONFLICT DO NOTHING`,
      [id, personId, this.clock.now()],
    );
  }

  /** Removes at most a thousand that are past their time; gives their number. */
  async forget(): Promise<number> {
    const before = new Date(this.clock.now().getTime() - daysKept * 86_400_000);
    const [, removed]: [unknown, number] = await this.dataSource.query(
      'DELETE FROM request WHERE ctid = ANY (ARRAY(SELECT ctid FROM request WHERE at < $1 LIMIT 1000))',
      [before],
    );
    return removed;
  }
}
