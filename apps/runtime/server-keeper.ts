import type { ChildProcess } from 'node:child_process';
import { setTimeout as pause } from 'node:timers/promises';

const shortestPauseMs = 200;
const longestPauseMs = 5_000;
const lookMs = 500;
/** How long one that was told to end by somebody else may wait for its connections: whoever stops the whole house ends within it. */
const goingDownMs = 5_000;

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
    /** Whether it is on its way down: somebody else told it to end, and it waits for those who are connected. */
    private readonly isGoingDown: () => boolean = () => false,
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
    if (server && !hasEnded(server)) await end(server, first, second, patienceMs);
  }

  private keep(server: ChildProcess): void {
    this.server = server;
    this.startedAt = performance.now();
    const ended = (): void => {
      if (!this.isStopping) this.coming = this.again(server.signalCode ?? `exit code ${server.exitCode}`);
    };
    if (hasEnded(server)) return ended();
    const watch = this.watch(server);
    server.once('exit', () => {
      clearInterval(watch);
      ended();
    });
  }

  /** One that takes nobody in any more and does not end either is ended, so that it is started again. */
  private watch(server: ChildProcess): NodeJS.Timeout {
    let since: number | undefined;
    const watch = setInterval(() => {
      since = this.isGoingDown() ? (since ?? performance.now()) : undefined;
      if (this.isStopping || since === undefined || performance.now() - since < goingDownMs) return;
      clearInterval(watch);
      this.say(`${this.what} was told to end by another program and lets nobody in: ending it, to start it again.`);
      void end(server, 'SIGINT', 'SIGQUIT', 15_000);
    }, lookMs);
    return watch.unref();
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

const hasEnded = (server: ChildProcess): boolean => server.exitCode !== null || server.signalCode !== null;

async function end(server: ChildProcess, first: NodeJS.Signals, second: NodeJS.Signals, waitMs: number): Promise<void> {
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  server.kill(first);
  const patience = setTimeout(() => server.kill(second), waitMs);
  await ended;
  clearTimeout(patience);
}
