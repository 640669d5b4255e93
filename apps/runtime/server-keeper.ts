import type { ChildProcess } from 'node:child_process';
import { setTimeout as pause } from 'node:timers/promises';

const shortestPauseMs = 200;
const longestPauseMs = 5_000;

/** Keeps a server process up: one that ends without being told to is started again, as often as it takes. */
export class ServerKeeper {
  private server: ChildProcess | undefined;
  private isStopping = false;
  private coming: Promise<void> = Promise.resolve();
  private startedAt = 0;

  constructor(
    private readonly what: string,
    private readonly start: () => Promise<ChildProcess>,
    private readonly say: (sentence: string) => void,
  ) {}

  /** The first start; its fault is the caller's. */
  async begin(): Promise<void> {
    this.keep(await this.start());
  }

  /** Ends it with the first signal, and with the second where that is not enough in time. */
  async stop(first: NodeJS.Signals, second: NodeJS.Signals, patienceMs: number): Promise<void> {
    this.isStopping = true;
    await this.coming;
    const { server } = this;
    if (!server || server.exitCode !== null || server.signalCode !== null) return;
    const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
    server.kill(first);
    const patience = setTimeout(() => server.kill(second), patienceMs);
    await ended;
    clearTimeout(patience);
  }

  private keep(server: ChildProcess): void {
    this.server = server;
    this.startedAt = performance.now();
    const ended = (): void => {
      if (!this.isStopping) this.coming = this.again(server.signalCode ?? `exit code ${server.exitCode}`);
    };
    if (server.exitCode !== null || server.signalCode !== null) ended();
    else server.once('exit', ended);
  }

  private async again(how: string): Promise<void> {
    this.say(`${this.what} ended (${how}); starting it again.`);
    // One that ends as soon as it starts is not started a thousand times a minute.
    if (performance.now() - this.startedAt < longestPauseMs) await pause(1_000);
    let told = '';
    for (let waitMs = shortestPauseMs; !this.isStopping; waitMs = Math.min(longestPauseMs, waitMs * 2)) {
      try {
        this.keep(await this.start());
        return this.say(`${this.what} is back.`);
      } catch (fault) {
        const { message } = fault as Error;
        if (message !== told) this.say(`${this.what} does not start yet: ${message}`);
        told = message;
        await pause(waitMs);
      }
    }
  }
}
