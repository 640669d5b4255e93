import { Inject, Injectable, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { CLOCK, type Clock } from '../config/config.js';
import { type LogHead, readLogHead } from './log-head.reader.js';
import { type Ask, sealAll } from './seal-log.js';

const everyMs = 60_000;

/** Seals the log once a minute, and when its head is wanted for paper. */
@Injectable()
export class LogSealer implements OnApplicationBootstrap, OnApplicationShutdown {
  private timer: NodeJS.Timeout | undefined;
  private going: Promise<unknown> | undefined;

  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  onApplicationBootstrap(): void {
    // A database that is away is no reason to fall over: the next minute comes.
    this.timer = setInterval(() => {
      this.going = this.seal().catch(() => undefined);
    }, everyMs);
    this.timer.unref();
  }

  async onApplicationShutdown(): Promise<void> {
    clearInterval(this.timer);
    await this.going;
  }

  /** Gives the number of lines sealed; what another process is sealing is left to it. */
  seal(): Promise<number> {
    return sealAll(
      (work) => this.dataSource.transaction('READ COMMITTED', (manager) => work((sql, values) => manager.query(sql, values))),
      () => this.clock.now(),
    );
  }

  /** Seals what is there, and gives the head with its day and number of lines: what is printed. */
  async head(): Promise<LogHead | undefined> {
    await this.seal();
    const ask: Ask = (sql, values) => this.dataSource.query(sql, values);
    return readLogHead(ask);
  }
}
