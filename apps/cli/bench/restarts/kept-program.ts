import type { ChildProcess } from 'node:child_process';
import { setTimeout as pause } from 'node:timers/promises';
import { startProcess, stopProcess, untilReady } from '../house/house.js';

/** As the units of the house have it: `RestartSec=1`. */
const pauseBeforeStartMs = 1_000;

/** A built program of the house as a service manager keeps it: whatever way it ends, it is started again after a second. */
export class KeptProgram {
  starts = 0;
  private child: ChildProcess | undefined;
  private isStopping = false;

  constructor(
    readonly name: string,
    /** Where it says whether it is ready. */
    readonly address: string,
    private readonly startOnce: () => ChildProcess,
  ) {
    this.start();
  }

  /** Ends it as a crash does; gives seconds until it is ready again, which is told and not judged: a busy machine takes its time. */
  async kill(): Promise<number> {
    const from = performance.now();
    const { starts } = this;
    if (this.child) await stopProcess(this.child, 'SIGKILL');
    while (this.starts === starts) await pause(20);
    await untilReady(this.address, 300);
    return (performance.now() - from) / 1000;
  }

  async stop(): Promise<void> {
    this.isStopping = true;
    if (this.child) await stopProcess(this.child, 'SIGTERM');
  }

  private start(): void {
    this.starts++;
    this.child = this.startOnce();
    this.child.once('exit', () => setTimeout(() => this.isStopping || this.start(), pauseBeforeStartMs));
  }
}

/** The program on a port of its own, with what the units put into its environment. */
export function keepProgram(
  root: string,
  program: 'api' | 'worker',
  name: string,
  port: number,
  environment: Record<string, string>,
): KeptProgram {
  const own: Record<string, string> = program === 'api' ? { PORT: String(port) } : { CARTWRIGHT_WORKER_PORT: String(port) };
  return new KeptProgram(name, `http://127.0.0.1:${port}`, () => startProcess(root, program, { ...environment, ...own }));
}
