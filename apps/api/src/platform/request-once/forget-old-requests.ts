import { Inject, Injectable, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock } from '../config.js';

/** How long the answer to a request is kept, days. A device that has held an action back for longer asks before it sends. */
export const requestDays = 30;

/** Rows removed by one statement, so that no other write waits for it. */
const atOnce = 1_000;

/** Removes requests that are past their time, a bounded number at a time, every hour. */
@Injectable()
export class ForgetOldRequests implements OnApplicationBootstrap, OnApplicationShutdown {
  private timer: NodeJS.Timeout | undefined;

  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  onApplicationBootstrap(): void {
    this.timer = setInterval(() => void this.forget().catch(() => undefined), 3_600_000);
    this.timer.unref();
  }

  onApplicationShutdown(): void {
    clearInterval(this.timer);
  }

  /** Gives the number of rows removed; at most fifty thousand an hour. */
  async forget(): Promise<number> {
    const before = new Date(this.clock.now().getTime() - requestDays * 86_400_000);
    let total = 0;
    for (let turn = 0; turn < 50; turn++) {
      const [, removed]: [unknown, number] = await this.dataSource.query(
        'DELETE FROM request WHERE ctid = ANY (ARRAY(SELECT ctid FROM request WHERE at < $1 LIMIT $2))',
        [before, atOnce],
      );
      total += removed;
      if (removed < atOnce) break;
    }
    return total;
  }
}
