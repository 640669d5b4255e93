import { Injectable, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { ChangeLog } from './live/change-log.js';
import { SessionStore } from './sign-in/session-store.js';
import { SignInTries } from './sign-in/tries.js';
import { SizeDays } from './database/size-days.js';
import { RequestLog } from './request-once/request-log.js';

const everyMs = 3_600_000;

/** Turns an hour: with what one turn removes, far more than a house makes in an hour. */
const turns = 50;

/** Removes what is past its time, a bounded number of rows at a time, so that no write waits for it. */
@Injectable()
export class Housekeeping implements OnApplicationBootstrap, OnApplicationShutdown {
  private timer: NodeJS.Timeout | undefined;

  constructor(
    private readonly requests: RequestLog,
    private readonly changes: ChangeLog,
    private readonly sessions: SessionStore,
    private readonly tries: SignInTries,
    private readonly sizes: SizeDays,
  ) {}

  onApplicationBootstrap(): void {
    // A database that is away is no reason to fall over: the next hour comes.
    this.timer = setInterval(() => void this.hourly().catch(() => undefined), everyMs);
    this.timer.unref();
    void this.sizes.keep().catch(() => undefined);
  }

  onApplicationShutdown(): void {
    clearInterval(this.timer);
  }

  private async hourly(): Promise<void> {
    await this.sizes.keep();
    await this.once();
  }

  /** Gives the numbers of rows removed. */
  async once(): Promise<{ requests: number; changes: number; sessions: number; tries: number }> {
    return {
      requests: await untilNone(() => this.requests.forget()),
      changes: await untilNone(() => this.changes.forget()),
      sessions: await untilNone(() => this.sessions.forget()),
      tries: await untilNone(() => this.tries.forget()),
    };
  }
}

async function untilNone(forget: () => Promise<number>): Promise<number> {
  let total = 0;
  for (let turn = 0; turn < turns; turn++) {
    const removed = await forget();
    if (removed === 0) break;
    total += removed;
  }
  return total;
}
