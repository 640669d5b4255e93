import { Inject, Injectable, Logger, type OnModuleDestroy } from '@nestjs/common';
import pg from 'pg';
import { CONFIG, type Config } from '../config/config.js';
import { livingName } from '../config/living-name.js';
import { logOutside } from '../logs/house-logger.js';
import { outsideRequest } from '../request-once/current-request.js';
import { sessionChannel } from '../sign-in/session-store.js';
import { ChangeLog, type Changes } from './change-log.js';

/** Between two reads of the log, milliseconds: what comes in between is told together. */
const leastGapMs = 100;

/** Read without being woken as well, milliseconds: a wake that was lost costs no more than this. */
const safetyGapMs = 15_000;

const longestPauseMs = 5_000;

/**
 * One connection a process that is woken (LISTEN/NOTIFY) when any API or worker has changed something. Being woken only means "read the log":
 * a connection that was lost in between misses nothing.
 */
@Injectable()
export class ChangeFeed implements OnModuleDestroy {
  private readonly logger = new Logger('live');
  private readonly listeners = new Set<(changes: Changes) => void>();
  private readonly doubters = new Set<(accountId?: string) => void>();
  /** Numbers told already that the log may give again. */
  private told = new Set<string>();
  private position: Promise<string> | undefined;
  private client: pg.Client | undefined;
  private isReading = false;
  private isWoken = false;
  private isClosed = false;
  private safety: NodeJS.Timeout | undefined;

  constructor(
    private readonly log: ChangeLog,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  /** Tells `listener` of all that is committed from now on, until the function it gives back is called. */
  async subscribe(listener: (changes: Changes) => void): Promise<() => void> {
    this.listeners.add(listener);
    this.position ??= outsideRequest(() => logOutside(() => this.start())).catch((fault: unknown) => {
      this.position = undefined;
      throw fault;
    });
    await this.position;
    return () => this.listeners.delete(listener);
  }

  /** Tells `doubter` whose sessions, or one of them, just ended; nobody named: of anybody, for the connection was lost meanwhile. */
  whenSessionsEnd(doubter: (accountId?: string) => void): void {
    this.doubters.add(doubter);
  }

  async onModuleDestroy(): Promise<void> {
    this.isClosed = true;
    clearInterval(this.safety);
    this.listeners.clear();
    this.doubters.clear();
    await this.client?.end().catch(() => undefined);
  }

  private async start(): Promise<string> {
    await this.listen().catch((fault: unknown) => this.again(fault, 250));
    this.safety = setInterval(() => this.wake(), safetyGapMs);
    this.safety.unref();
    return this.log.position();
  }

  private async listen(): Promise<void> {
    const client = new pg.Client({
      connectionString: this.config.databaseUrl,
      keepAlive: true,
      connectionTimeoutMillis: longestPauseMs,
      application_name: livingName,
    });
    client.on('notification', ({ channel, payload }) => {
      if (channel === sessionChannel) for (const doubter of this.doubters) doubter(payload);
      else this.wake();
    });
    client.on('error', (fault) => this.again(fault, 250));
    client.on('end', () => this.again(new Error('the connection ended'), 250));
    this.client = client;
    await client.connect();
    await client.query(`LISTEN change; LISTEN ${sessionChannel}`);
  }

  /** A new connection in the place of one that ended; each is given up once, whichever way its end is told first. */
  private again(fault: unknown, pauseMs: number): void {
    const lost = this.client;
    if (this.isClosed || !lost) return;
    this.client = undefined;
    lost.removeAllListeners();
    lost.on('error', () => undefined);
    void lost.end().catch(() => undefined);
    this.logger.warn(`Not woken by the database (${fault instanceof Error ? fault.message : String(fault)}); connecting again.`);
    setTimeout(() => {
      if (this.isClosed) return;
      this.listen().then(
        () => {
          for (const doubter of this.doubters) doubter();
          this.wake();
        },
        (next: unknown) => this.again(next, Math.min(longestPauseMs, pauseMs * 2)),
      );
    }, pauseMs).unref();
  }

  private wake(): void {
    this.isWoken = true;
    if (!this.isReading) void this.readOn();
  }

  private async readOn(): Promise<void> {
    this.isReading = true;
    while (this.isWoken && !this.isClosed) {
      this.isWoken = false;
      await this.tellNew().catch((fault: unknown) =>
        this.logger.warn(`Changes could not be read: ${fault instanceof Error ? fault.message : String(fault)}`),
      );
      await new Promise((done) => setTimeout(done, leastGapMs).unref());
    }
    this.isReading = false;
  }

  private async tellNew(): Promise<void> {
    if (!this.position) return;
    const { position, changes } = await this.log.read(await this.position);
    const fresh = changes.filter((each) => !this.told.has(each.number));
    this.told = new Set(changes.map((each) => each.number));
    this.position = Promise.resolve(position);
    if (fresh.length === 0) return;
    const topics = [...new Set(fresh.map((each) => each.topic))];
    for (const listener of this.listeners) listener({ position, topics });
  }
}
