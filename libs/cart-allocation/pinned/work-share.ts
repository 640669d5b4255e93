import type { WorkBudget } from '#kernel';

/** A part of what is left of the work, and of the time. */
export class WorkShare {
  private readonly workLeft: number;
  private readonly secondsLeft: number;
  private asked = 0;

  constructor(
    private readonly budget: WorkBudget,
    share: number,
  ) {
    this.workLeft = (1 - share) * budget.workLeft;
    this.secondsLeft = (1 - share) * budget.secondsLeft();
  }

  /** Counts `units`; false once the part is used up. */
  spend(units: number): boolean {
    if (!this.budget.spend(units) || this.budget.workLeft < this.workLeft) return false;
    if (++this.asked % 64 !== 0 || this.budget.secondsLeft() >= this.secondsLeft) return true;
    this.budget.cutOffByClock();
    return false;
  }
}
