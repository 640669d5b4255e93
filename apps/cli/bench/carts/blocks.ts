import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { allocationCaseOf, readBlocksProblem, solveAllocation, usualAllocationWork } from '#cart-allocation';
import { loadIntegerProgramSolver } from '#runtime';
import { folderFrom, median, numberFrom, readArguments, say } from '../arguments.js';
import { randomTowers } from './random-towers.js';

/**
 * Planning-competition blocks problems below --data DIR against shortest.csv there (file, blocks, shortest moves); or with --towers 100,200 random
 * ones, whose shortest plans nobody knows.
 */
export async function run(args: readonly string[]): Promise<number> {
  const values = readArguments(args);
  if (values.has('towers')) return runTowers(values);
  const folder = folderFrom(values);
  const seconds = numberFrom(values, 'seconds', 10);
  const work = numberFrom(values, 'work', usualAllocationWork);
  const most = numberFrom(values, 'most', 60);
  const integerProgram = await loadIntegerProgramSolver();
  const known = shortestOf(folder);
  const rows: { blocks: number; moves: number; bound: number; seconds: number; known: number; isWrong: boolean }[] = [];
  for (const name of readdirSync(folder).filter((each) => each.endsWith('.pddl'))) {
    const { blocks, shortest } = known.get(name) ?? { blocks: 0, shortest: NaN };
    if (blocks > most) continue;
    const problem = allocationCaseOf(readBlocksProblem(readFileSync(join(folder, name), 'utf8')));
    const start = performance.now();
    const answer = solveAllocation(problem, { work, timeLimitSeconds: seconds, now: () => performance.now(), integerProgram });
    const isWrong =
      answer.mismatch.length > 0 ||
      answer.bound > shortest ||
      answer.boxMoves < shortest ||
      (answer.status === 'optimal' && answer.boxMoves !== shortest);
    rows.push({
      blocks,
      moves: answer.boxMoves,
      bound: answer.bound,
      seconds: (performance.now() - start) / 1000,
      known: shortest,
      isWrong,
    });
  }
  rows.sort((a, b) => a.blocks - b.blocks);
  say('blocks  moves  bound  known  seconds');
  for (const row of rows)
    say(
      `${String(row.blocks).padStart(6)}${String(row.moves).padStart(7)}${String(row.bound).padStart(7)}${String(row.known).padStart(7)}${row.seconds.toFixed(2).padStart(9)}${row.isWrong ? '  WRONG' : ''}`,
    );
  const isProved = (row: (typeof rows)[number]) => row.moves === row.known && row.bound === row.known;
  const open = rows.filter((row) => !isProved(row)).map((row) => row.blocks);
  const wrong = rows.filter((row) => row.isWrong).length;
  say(
    JSON.stringify({
      problems: rows.length,
      optimal: rows.filter(isProved).length,
      optimalUpTo20: rows.filter((row) => row.blocks <= 20 && isProved(row)).length,
      problemsUpTo20: rows.filter((row) => row.blocks <= 20).length,
      shortestFound: rows.filter((row) => row.moves === row.known).length,
      openAt: open,
      wrong,
      medianMs: Number((median(rows.map((row) => row.seconds)) * 1000).toFixed(1)),
      boxMoves: rows.reduce((sum, row) => sum + row.moves, 0),
    }),
  );
  return wrong === 0 && rows.length > 0 && open.every((blocks) => blocks > 20) ? 0 : 1;
}

async function runTowers(values: ReadonlyMap<string, string>): Promise<number> {
  const timeLimitSeconds = numberFrom(values, 'seconds', 60);
  const work = numberFrom(values, 'work', 20 * usualAllocationWork);
  const seeds = numberFrom(values, 'seeds', 5);
  const integerProgram = await loadIntegerProgramSolver();
  say('blocks  seed  moves  bound  seconds');
  const summary = values
    .get('towers')!
    .split(',')
    .map(Number)
    .map((blocks) => {
      const runs = Array.from({ length: seeds }, (_, index) => {
        const start = performance.now();
        const problem = allocationCaseOf(randomTowers(blocks, index + 1));
        const answer = solveAllocation(problem, { work, timeLimitSeconds, now: () => performance.now(), integerProgram });
        const seconds = (performance.now() - start) / 1000;
        say(
          `${String(blocks).padStart(6)}${String(index + 1).padStart(6)}${String(answer.boxMoves).padStart(7)}${String(answer.bound).padStart(7)}${seconds.toFixed(2).padStart(9)}  ${answer.stoppedBy}${answer.mismatch.length > 0 ? '  WRONG' : ''}`,
        );
        return { seconds, gap: answer.boxMoves - answer.bound, isWrong: answer.mismatch.length > 0 };
      });
      return {
        blocks,
        seeds,
        proved: runs.filter((each) => each.gap === 0).length,
        largestGap: Math.max(...runs.map((each) => each.gap)),
        medianSeconds: Number(median(runs.map((each) => each.seconds)).toFixed(2)),
        wrong: runs.filter((each) => each.isWrong).length,
      };
    });
  say(JSON.stringify({ towers: summary }));
  return summary.every((each) => each.wrong === 0) ? 0 : 1;
}

function shortestOf(folder: string): Map<string, { blocks: number; shortest: number }> {
  const [, ...lines] = readFileSync(join(folder, 'shortest.csv'), 'utf8').trim().split(/\r?\n/);
  return new Map(
    lines.map((line) => {
      const [file, blocks, shortest] = line.split(',');
      return [file!, { blocks: Number(blocks), shortest: Number(shortest) }] as const;
    }),
  );
}
