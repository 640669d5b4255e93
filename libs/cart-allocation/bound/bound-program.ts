import type { IntegerProgramSolver, WorkBudget } from '#kernel';
import { type FloorPlan, cartKey, loadKey, mayCarry } from '../case/index.js';
import { type Choice, readChoice } from './choice.js';
import { type Deadlock, type Pairing, Waiting } from './deadlocks.js';
import { singleKinds } from './first-event.js';
import { nearestPairs } from './nearest-pairs.js';
import { type Classes, type Program, type Tie, tiesAtMost, writeProgram } from './program-text.js';
import { classesOf, leastComingIn, promisingPairs, unitsPerColumn } from './promising-pairs.js';

export interface BoundAnswer {
  /** No plan has fewer box moves. */
  readonly bound: number;
  readonly choice: Choice | undefined;
}

export interface BoundOptions {
  /** Part of the work that is left which this call may use. */
  readonly share: number;
  /** Gives 0 to 1: equal choices weighed anew, for another one of them. */
  readonly vary?: () => number;
  readonly fewest?: Tie;
}

/** Units of work for a program, however small. */
const unitsPerProgram = 30_000;
/** Units of work for a pair of a relaxed program, and pairs that a second of the clock is good for. */
const unitsPerPairRelaxed = 10;
const pairsRelaxedPerSecond = 20_000;
/** Rounds of solving and cutting off choices whose boxes wait for one another in circles. */
const mostRounds = 40;

/**
 * The least F + O - D over all choices: F boxes that must come into place, O boxes that must come off, D moves that do both. Carts with the
 * same stack of kinds, and loads of the same kinds, are one class each, so the program stays small however large the fleet is. Where boxes that there are
 * once wait for one another in a circle, one of them makes two moves: such circles are found in each solution and become rows of the program
 * (`deadlocks.ts`), until a solution has none.
 */
export class BoundProgram {
  private classes: Classes;
  private readonly single: ReadonlySet<number>;
  private readonly cartClassOf: ReadonlyMap<number, number>;
  private readonly loadClassOf: ReadonlyMap<number, number>;
  private readonly deadlocks: Deadlock[] = [];
  private best = 0;
  /** Circles that were known when all pairs were last asked about; -1: not yet. */
  private askedWith = -1;

  constructor(
    private readonly floor: FloorPlan,
    private readonly integerProgram: IntegerProgramSolver,
    private readonly budget: WorkBudget,
  ) {
    const carts = classesOf(floor.carts.map((cart) => cartKey(floor, cart)));
    const loads = classesOf(floor.loads.map(loadKey));
    this.classes = { carts, loads, promising: promisingPairs(floor, carts, loads, budget) };
    this.single = singleKinds(floor);
    this.cartClassOf = new Map(carts.flatMap((members, index) => members.map((cart) => [cart, index] as const)));
    this.loadClassOf = new Map(loads.flatMap((members, index) => members.map((load) => [load, index] as const)));
    this.best = leastComingIn(floor, carts, loads);
  }

  /** The bound so far, and a choice of least cost by the program as it now is. */
  solve({ share, vary = () => 1, fewest = 'boxes lifted' }: BoundOptions): BoundAnswer {
    const workBefore = this.budget.workLeft;
    const secondsBefore = this.budget.secondsLeft();
    if (this.classes.promising && this.askedWith < 0) this.boundOfAllPairs();
    const program = writeProgram(this.floor, this.classes, { vary, fewest });
    let choice: Choice | undefined;
    for (let round = 0; round < mostRounds; round++) {
      const work = this.budget.workLeft - (1 - share) * workBefore;
      const seconds = this.budget.secondsLeft() - (1 - share) * secondsBefore;
      if (round > 0 && (work <= 0 || seconds <= 0 || this.budget.isSpent())) break;
      const found = this.run(program, Math.max(0, work), Math.max(0.01, seconds), fewest);
      if (!found) break;
      const waiting = new Waiting(this.floor, found, this.single);
      const known = this.deadlocks.length;
      choice = { ...found, aside: waiting.asideFor(this.deadlocks, found.aside) };
      if (this.deadlocks.length === known) break;
    }
    if (this.classes.promising && choice && this.askedWith === 0 && this.deadlocks.length > 0) this.boundOfAllPairs();
    return { bound: this.best, choice };
  }

  /**
   * Where the program holds only some pairs it bounds nothing: the relaxation over all of them does, and seldom lies below it. It also says which pairs
   * are worth holding. Asked first, and once more when circles are known.
   */
  private boundOfAllPairs(): void {
    const { carts, loads } = this.classes;
    const pairs = carts.length * loads.length;
    const isFirst = this.askedWith < 0;
    this.askedWith = this.deadlocks.length;
    if (unitsPerPairRelaxed * pairs > this.budget.workLeft) return;
    if (pairs > pairsRelaxedPerSecond * this.budget.secondsLeft()) return this.budget.cutOffByClock();
    const program = writeProgram(this.floor, { ...this.classes, promising: undefined }, { vary: () => 1, fewest: 'boxes lifted' });
    this.budget.spend(unitsPerProgram + unitsPerPairRelaxed * pairs);
    const answer = this.integerProgram.solve(program.textWith(this.rowsOfDeadlocks(), []), {
      timeLimitSeconds: this.budget.secondsLeft(),
      iterations: Math.max(100, this.budget.workLeft / program.rows),
      relaxed: true,
    });
    this.budget.spend(answer.iterations * program.rows);
    if (answer.isCutOff) this.budget.cutOffByClock();
    if (answer.status !== 'optimal') return;
    this.best = Math.max(this.best, Math.ceil(answer.objective! - tiesAtMost - 1e-6));
    const { values, reducedCosts } = answer;
    if (isFirst && reducedCosts)
      this.classes = { carts, loads, promising: nearestPairs(this.floor, carts, loads, { values, reducedCosts }) };
  }

  private run(program: Program, work: number, seconds: number, fewest: Tie): Choice | undefined {
    const units = unitsPerProgram + unitsPerColumn * program.columns.size;
    this.budget.spend(units);
    const text = program.textWith(this.rowsOfDeadlocks(), this.kindsOfDeadlocks());
    // Where the bound is known beforehand, a choice that meets it is as good as any: ties alone are not worth the search.
    const enough =
      this.classes.promising && this.askedWith >= 0 && fewest === 'boxes lifted' ? { enough: this.best + tiesAtMost + 1e-6 } : {};
    const solve = (part: number, relaxed: boolean) => {
      const iterations = Math.max(100, (part * work - units) / program.rows);
      const answer = this.integerProgram.solve(text, { timeLimitSeconds: part * seconds, iterations, relaxed, ...enough });
      this.budget.spend(answer.iterations * program.rows);
      if (answer.isCutOff) this.budget.cutOffByClock();
      return answer;
    };
    const answer = solve(0.7, false);
    // A program without all its pairs bounds nothing: then only what must come into place counts.
    if (!this.classes.promising) {
      const cost =
        answer.status === 'optimal' ? answer.objective! - 2 * tiesAtMost : (answer.bound ?? solve(0.3, true).objective ?? 0) - tiesAtMost;
      this.best = Math.max(this.best, Math.ceil(cost - 1e-6));
    }
    const choice =
      answer.values.size > 0 ? readChoice(this.floor, this.classes.carts, this.classes.loads, program.columns, answer.values) : undefined;
    return choice && { ...choice, aside: new Set([...this.single].filter((kind) => (answer.values.get(`w${kind}`) ?? 0) > 0.5)) };
  }

  /** One of the boxes in a circle is set aside, or the circle does not hold. */
  private rowsOfDeadlocks(): string[] {
    return this.deadlocks.map(({ kinds, onlyIf, unless }) => {
      const may = new Set(unless.filter((each) => this.has(each)).map((each) => this.column(each)));
      const must = new Set(onlyIf.map((each) => this.column(each)));
      const terms = [...kinds.map((kind) => `w${kind}`), ...may].join(' + ');
      return `${terms}${[...must].map((each) => ` - ${each}`).join('')} >= ${1 - must.size}`;
    });
  }

  private kindsOfDeadlocks(): string[] {
    return [...new Set(this.deadlocks.flatMap(({ kinds }) => kinds))].map((kind) => `w${kind}`);
  }

  private column({ cart, load }: Pairing): string {
    return `x${this.cartClassOf.get(cart)}_${this.loadClassOf.get(load)}`;
  }

  /** Whether the program has a column for the pairing. */
  private has({ cart, load }: Pairing): boolean {
    const { promising } = this.classes;
    if (promising && !promising.get(this.cartClassOf.get(cart)!)?.includes(this.loadClassOf.get(load)!)) return false;
    return mayCarry(this.floor.carts[cart]!, this.floor.loads[load]!);
  }
}
