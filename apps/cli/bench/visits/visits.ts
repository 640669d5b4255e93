import { solveSeason, verifySeason } from '#inspection-calendar';
import { loadIntegerProgramSolver } from '#runtime';
import { numberFrom, readArguments, say } from '../arguments.js';
import { madeSeason } from './made-season.js';

const goalMs = 1000;

/** Seeded seasons of 40 tours: visits planned and checked, what is proven, and how long it takes with and without the solver of integer programs. */
export async function run(args: readonly string[]): Promise<number> {
  const values = readArguments(args);
  const [seasons, first] = [numberFrom(values, 'seasons', 10), numberFrom(values, 'first', 1)];
  const size = {
    tours: 40,
    items: numberFrom(values, 'items', 200),
    visits: numberFrom(values, 'visits', 60),
    from: '2027-01-01',
    to: '2027-12-31',
  };
  const solver = await loadIntegerProgramSolver();
  const times: number[] = [];
  let [proven, provenExaminations, wrong] = [0, 0, 0];
  for (let seed = first; seed < first + seasons; seed++) {
    const problem = madeSeason(seed, size);
    const start = performance.now();
    const { count, notSaved, withIdle, ...answer } = solveSeason(problem, solver);
    times.push(performance.now() - start);
    const faults = verifySeason(problem, { ...answer, count, notSaved, withIdle });
    if (faults.length > 0) wrong++;
    if (count.visits === count.visitsAtLeast) proven++;
    if (count.examinations === count.examinationsAtLeast) provenExaminations++;
    say(
      `season ${seed}: ${count.visits} visits (at least ${count.visitsAtLeast}), ${count.examinations} examinations (at least ${count.examinationsAtLeast}), ` +
        `${notSaved.length} not saved, with idle kit ${withIdle.visits} visits (at least ${withIdle.visitsAtLeast}) and ${withIdle.examinations} examinations, ${times.at(-1)!.toFixed(0)} ms${faults.length > 0 ? `; WRONG: ${faults[0]}` : ''}`,
    );
  }
  const slowestMs = Math.round(Math.max(...times));
  say(JSON.stringify({ seasons, ...size, proven, provenExaminations, wrong, slowestMs, goalMs }));
  return wrong > 0 || slowestMs > goalMs ? 1 : 0;
}
