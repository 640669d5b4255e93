import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { Piscina } from 'piscina';
import { CONFIG, type Config } from '../../platform/config/config.js';
import { Metrics } from '../../platform/metrics/metrics.js';
import type { Effort, Solved, TaskInput } from './planning-task.js';

/** A task's file and what it is asked; `known`, `effort` and `progress` as in TaskInput. */
export interface Task {
  readonly file: string;
  readonly subject: object;
  readonly known?: string | null;
  readonly effort?: Effort;
  readonly progress?: SharedArrayBuffer;
  readonly signal?: AbortSignal;
}

export const SOLVERS = Symbol('solvers');

/** Where planning tasks run. */
export interface Solvers {
  /** Work that a job waits for; as many at once as `slots`. */
  solve<Answer>(task: Task): Promise<Solved<Answer>>;
  /** Work that somebody looks at a screen for: never behind a plan. */
  look<Answer>(task: Task): Promise<Solved<Answer>>;
}

/** Solvers that run at once: the cores less the one that answers requests. */
export const slots = Math.max(1, availableParallelism() - 1);

/** Threads of this process, at a lower priority than the one that answers requests. They start when first needed and end when idle. */
@Injectable()
export class SolverPool implements Solvers, OnApplicationShutdown {
  private readonly jobs = pool(slots);
  private readonly looks = pool(1);

  private busy = 0;

  constructor(
    @Inject(CONFIG) private readonly config: Config,
    metrics: Metrics,
  ) {
    metrics.watch('cartwright_solvers', 'Plans that this process solves at once at most.', () => slots);
    metrics.watch('cartwright_solvers_busy', 'Plans that this process solves now.', () => this.busy);
  }

  async solve<Answer>(task: Task): Promise<Solved<Answer>> {
    this.busy++;
    try {
      return await this.run<Answer>(this.jobs, task);
    } finally {
      this.busy--;
    }
  }

  look<Answer>(task: Task): Promise<Solved<Answer>> {
    return this.run(this.looks, task);
  }

  async onApplicationShutdown(): Promise<void> {
    await Promise.all([this.jobs.destroy(), this.looks.destroy()]);
  }

  private run<Answer>(threads: Piscina, { file, signal, subject, known, effort, progress }: Task): Promise<Solved<Answer>> {
    const input: TaskInput<object> = {
      databaseUrl: this.config.databaseUrl,
      subject,
      known: known ?? null,
      effort: effort ?? 'usual',
      usualWork: this.config.usualWork,
      progress: progress ?? new SharedArrayBuffer(4),
    };
    return threads.run(input, { filename: file, ...(signal ? { signal } : {}) }) as Promise<Solved<Answer>>;
  }
}

// A thread that waits for its next task must hear its database connection end: no waiting on shared memory.
const pool = (maxThreads: number): Piscina =>
  new Piscina({ minThreads: 0, maxThreads, idleTimeout: 300_000, atomics: 'disabled', recordTiming: false });

/** The built file of a task beside the caller, also when the caller runs from its source under test: a thread has no transpiler. */
export const taskFile = (caller: string, name: string): string =>
  fileURLToPath(new URL(name, caller.replace(/(\/dist)?\/apps\/api\/src\//, '/dist/apps/api/src/')));
