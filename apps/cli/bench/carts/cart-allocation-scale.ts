import { naiveBoxMoves, solveAllocation, usualAllocationWork, verifyAllocation } from '#cart-allocation';
import { loadIntegerProgramSolver } from '#runtime';
import { clockFrom, median, numberFrom, readArguments, say } from '../arguments.js';
import { makeFleet } from './made-fleet.js';

/** Seconds within which a fleet of so many carts is to be proved optimal. */
const wantedWithin: Readonly<Record<number, number>> = { 250: 1, 1000: 5, 4000: 15 };

/** Seeded fleets of 20 to 10,000 carts, by the wall clock or, on a machine that is shared, by processor time. */
export async function run(args: readonly string[]): Promise<number> {
  const values = readArguments(args);
  const seeds = numberFrom(values, 'seeds', 10);
  const limit = numberFrom(values, 'seconds', 30);
  const work = numberFrom(values, 'work', 20 * usualAllocationWork);
  const sizes = (values.get('carts') ?? '20,60,250,1000,4000').split(',').map(Number);
  const { clock, now } = clockFrom(values.get('clock'));
  const integerProgram = await loadIntegerProgramSolver();
  // Warm: what is measured is the engine, not the first compilation of its code.
  for (const carts of [20, 250]) solveAllocation(makeFleet(carts, 99), { timeLimitSeconds: 5, now, integerProgram });
  const summary: object[] = [];
  let wrong = 0;
  say(' carts  boxes  loads  seed  moves  bound  gap  naive  seconds');
  for (const carts of sizes) {
    const runs: { seconds: number; checking: number; gap: number; moves: number; bound: number; naive: number }[] = [];
    for (let seed = 1; seed <= seeds; seed++) {
      const fleet = makeFleet(carts, seed);
      const start = now();
      const answer = solveAllocation(fleet, { work, timeLimitSeconds: limit, now, integerProgram });
      const seconds = (now() - start) / 1000;
      const checked = now();
      const [fault] = verifyAllocation(fleet, answer);
      const checking = (now() - checked) / 1000;
      wrong += fault ? 1 : 0;
      const naive = naiveBoxMoves(fleet);
      const gap = answer.boxMoves - answer.bound;
      runs.push({ seconds, checking, gap, moves: answer.boxMoves, bound: answer.bound, naive });
      const cells = [carts, Object.keys(fleet.boxes).length, fleet.loads.length, seed, answer.boxMoves, answer.bound, gap, naive];
      say(
        `${cells.map((each, index) => String(each).padStart([6, 7, 7, 6, 7, 7, 5, 7][index]!)).join('')}${seconds.toFixed(2).padStart(9)}  ${answer.stoppedBy}${fault ? `  WRONG ${JSON.stringify(fault)}` : ''}`,
      );
    }
    const within = wantedWithin[carts];
    summary.push({
      carts,
      seeds: runs.length,
      proved: runs.filter((each) => each.gap === 0).length,
      ...(within === undefined
        ? {}
        : { provedWithin: runs.filter((each) => each.gap === 0 && each.seconds <= within).length, withinSeconds: within }),
      medianSeconds: Number(median(runs.map((each) => each.seconds)).toFixed(3)),
      slowestSeconds: Number(Math.max(...runs.map((each) => each.seconds)).toFixed(3)),
      checkingShare: Number((sumOf(runs, 'checking') / sumOf(runs, 'seconds')).toFixed(4)),
      boxMoves: sumOf(runs, 'moves'),
      bound: sumOf(runs, 'bound'),
      naiveBoxMoves: sumOf(runs, 'naive'),
    });
  }
  say(JSON.stringify({ clock, fleets: summary, wrong }));
  return wrong === 0 ? 0 : 1;
}

const sumOf = <K extends string>(runs: readonly Readonly<Record<K, number>>[], key: K): number =>
  runs.reduce((sum, each) => sum + each[key], 0);
