import type { Solvers, Task } from '../../apps/api/src/planning/solve/solver-pool.js';

/** Holds the threads that plan: who solves comes to the gate, and goes on when the test lets him. Nothing is decided by a clock. */
export class Gate {
  /** Solves that came here, in their order. */
  readonly came: Task[] = [];
  private readonly waiting: (() => void)[] = [];
  private readonly watchers: { readonly count: number; readonly tell: () => void }[] = [];

  /** `before`: held before they solve; `after`: with the answer in hand. */
  constructor(
    private readonly place: 'before' | 'after',
    private isOpen = false,
  ) {}

  readonly around = (pool: Solvers): Solvers => ({
    look: (task) => pool.look(task),
    solve: async (task) => {
      if (this.place === 'before') await this.pass(task);
      const solved = await pool.solve<never>(task);
      if (this.place === 'after') await this.pass(task);
      return solved;
    },
  });

  /** When so many came in all. */
  reached(count: number): Promise<void> {
    return new Promise((tell) => {
      this.watchers.push({ count, tell });
      this.look();
    });
  }

  close(): void {
    this.isOpen = false;
  }

  /** Lets go who waits; they alone, unless it stays open. */
  open({ stays = true } = {}): void {
    this.isOpen = stays;
    for (const go of this.waiting.splice(0)) go();
  }

  private async pass(task: Task): Promise<void> {
    this.came.push(task);
    this.look();
    if (!this.isOpen) await new Promise<void>((go) => this.waiting.push(go));
  }

  private look(): void {
    for (const { count, tell } of this.watchers) if (this.came.length >= count) tell();
  }
}
