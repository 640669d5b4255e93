/** How much a search may do. */
export interface WorkLimits {
  /** Units of work: what one unit is, each search says. Equal input and equal work give the equal answer. */
  readonly work: number;
  /** Only a cap: an answer cut off by it may differ from run to run. */
  readonly timeLimitSeconds: number;
  /** Milliseconds of any clock that does not go back. */
  readonly now: () => number;
}

/** Counts the work of one search, and looks at the clock now and then so that it ends in time on any machine. */
export class WorkBudget {
  private readonly deadline: number;
  private spent = 0;
  private lookAt = 0;
  private clockSays = false;
  private wasCutOff = false;

  constructor(private readonly limits: WorkLimits) {
    this.deadline = limits.now() + limits.timeLimitSeconds * 1000;
  }

  /** Counts `units`; false once work or time is used up. */
  spend(units: number): boolean {
    this.spent += units;
    if (this.spent >= this.lookAt) {
      this.lookAt = this.spent + 1000;
      this.clockSays ||= this.limits.now() >= this.deadline;
    }
    return !this.clockSays && this.spent < this.limits.work;
  }

  /** Whether anything is left; the clock is looked at. */
  isSpent(): boolean {
    this.clockSays ||= this.limits.now() >= this.deadline;
    return this.clockSays || this.spent >= this.limits.work;
  }

  get workLeft(): number {
    return Math.max(0, this.limits.work - this.spent);
  }

  get workDone(): number {
    return this.spent;
  }

  secondsLeft(): number {
    return Math.max(0, (this.deadline - this.limits.now()) / 1000);
  }

  /** What used it up, or cut a part of the search off; undefined while both last. */
  get stoppedBy(): 'work' | 'clock' | undefined {
    return this.clockSays || this.wasCutOff ? 'clock' : this.spent >= this.limits.work ? 'work' : undefined;
  }

  /** A part of the search that keeps time itself was ended by it: the rest goes on, but another run may come out otherwise. */
  cutOffByClock(): void {
    this.wasCutOff = true;
  }
}
