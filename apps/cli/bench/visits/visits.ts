import { type SeasonAnswer, solveExaminations, solveSeason, verifyExaminations, verifySeason } from '#inspection-calendar';
import { loadIntegerProgramSolver } from '#runtime';
import { median, numberFrom, readArguments, say } from '../arguments.js';
import { madeCase } from './made-case.js';
import { madeSeason } from './made-season.js';

const goalMs = 1000;

interface Solved {
  readonly what: string;
  readonly counts: readonly SeasonAnswer['count'][];
  readonly fault: string | undefined;
  /** CPU time of this process alone: others use the machine as well. */
  readonly userMs: number;
}

/** Seeded seasons of 40 tours, and as many cases of items seen on random days: visits planned and checked, what is proven, and how long it takes. */
export async function run(args: readonly string[]): Promise<number> {
  const values = readArguments(args);
  const [seasons, first] = [numberFrom(values, 'seasons', 50), numberFrom(values, 'first', 1)];
  const [items, visits] = [numberFrom(values, 'items', 200), numberFrom(values, 'visits', 60)];
  const span = { from: '2027-01-01', to: '2027-12-31' };
  const solver = await loadIntegerProgramSolver();
  const solved: Solved[] = [];
  for (let seed = first; seed < first + seasons; seed++) {
    solved.push(
      timed(`season ${seed}`, () => {
        const problem = madeSeason(seed, { tours: 40, items, visits, ...span });
        const answer = solveSeason(problem, solver);
        return { counts: [answer.count, answer.withIdle], check: () => verifySeason(problem, answer) };
      }),
      timed(`case ${seed}`, () => {
        const problem = madeCase(seed, { items, visits, ...span });
        const answer = solveExaminations(problem, solver);
        const { count, atLeast, examinations, examinationsAtLeast } = answer.visits;
        const counts = [{ visits: count, visitsAtLeast: atLeast, examinations, examinationsAtLeast }];
        return { counts, check: () => verifyExaminations(problem, answer) };
      }),
    );
    for (const each of solved.slice(-2)) say(lineOf(each));
  }
  const times = solved.map((each) => each.userMs);
  const counts = solved.flatMap((each) => each.counts);
  const [proven, provenExaminations] = [
    counts.filter((each) => each.visits === each.visitsAtLeast).length,
    counts.filter((each) => each.examinations === each.examinationsAtLeast).length,
  ];
  const wrong = solved.filter((each) => each.fault !== undefined).length;
  const [medianUserMs, slowestUserMs] = [Math.round(median(times)), Math.round(Math.max(...times))];
  say(
    JSON.stringify({
      seasons,
      items,
      visits,
      answers: counts.length,
      proven,
      provenExaminations,
      wrong,
      medianUserMs,
      slowestUserMs,
      goalMs,
    }),
  );
  return wrong > 0 || slowestUserMs > goalMs || proven < counts.length ? 1 : 0;
}

function timed(what: string, solve: () => { counts: Solved['counts']; check: () => readonly string[] }): Solved {
  const start = process.cpuUsage();
  const { counts, check } = solve();
  const userMs = process.cpuUsage(start).user / 1000;
  return { what, counts, fault: check()[0], userMs };
}

function lineOf({ what, counts, fault, userMs }: Solved): string {
  const told = counts.map(
    (each) =>
      `${each.visits} visits (at least ${each.visitsAtLeast}), ${each.examinations} examinations (at least ${each.examinationsAtLeast})`,
  );
  return `${what}: ${told.join('; with idle kit ')}; ${userMs.toFixed(0)} ms of CPU${fault === undefined ? '' : `; WRONG: ${fault}`}`;
}
