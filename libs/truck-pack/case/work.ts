/** What ended a search: nothing better exists, its count of work was used up, or the clock cut it short. */
export type StoppedBy = 'proof' | 'work' | 'clock';

export interface WorkLimits {
  /** Steps that may be counted; as many as it takes where left out. */
  readonly work?: number;
  /** Caps the search; then the answer depends on how busy the machine was, and says so. */
  readonly timeLimitSeconds?: number;
  /** Milliseconds of any clock that does not go back; needed for a time limit. */
  readonly now?: () => number;
  /** What that clock said when the time began to count, where that was earlier: reading a large case takes a part of it. */
  readonly startedAt?: number;
}

/** Counts what a search looks at: a step is about what a lane, a place or a tower costs to look at. Equal inputs end at the equal step; a clock only caps. */
export class Work {
  private spent = 0;
  private most: number;

  constructor(
    limits: WorkLimits = {},
    private readonly clock = new Clock(limits),
  ) {
    this.most = limits.work ?? Infinity;
  }

  add(steps: number): void {
    this.spent += steps;
  }

  get steps(): number {
    return Math.round(this.spent);
  }

  get isOver(): boolean {
    return this.spent >= this.most || this.clock.isLate();
  }

  /** The clock has cut the search short. */
  get isCut(): boolean {
    return this.clock.isLate();
  }

  stoppedBy(isProven: boolean): StoppedBy {
    return isProven ? 'proof' : this.clock.wasLate ? 'clock' : 'work';
  }

  /** Under the same clock, or one that allows `share` of its time, without a limit of its own: for what is answered however much was used up before. */
  unlimited(share = 1): Work {
    return new Work({}, share === 1 ? this.clock : this.clock.allowing(share));
  }

  /** Part of the work that is left, 0 to 1, for one line of search. */
  within<T>(part: number, search: () => T): T {
    const { most } = this;
    this.most = Math.min(most, this.spent + part * (most - this.spent));
    try {
      return search();
    } finally {
      this.most = most;
    }
  }
}

class Clock {
  wasLate = false;
  private readonly deadline: number;
  private readonly now: (() => number) | undefined;

  private readonly limits: WorkLimits;

  constructor(limits: WorkLimits) {
    const { timeLimitSeconds = Infinity, now } = limits;
    this.now = timeLimitSeconds === Infinity ? undefined : now;
    const startedAt = limits.startedAt ?? this.now?.() ?? 0;
    this.limits = { ...limits, startedAt };
    this.deadline = startedAt + timeLimitSeconds * 1000;
  }

  allowing(share: number): Clock {
    const { timeLimitSeconds = Infinity } = this.limits;
    return new Clock({ ...this.limits, timeLimitSeconds: share * timeLimitSeconds });
  }

  isLate(): boolean {
    if (this.now && !this.wasLate) this.wasLate = this.now() >= this.deadline;
    return this.wasLate;
  }
}
