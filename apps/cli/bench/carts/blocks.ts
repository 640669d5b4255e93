import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { type BlocksProblem, allocationCaseOf, readBlocksProblem, solveAllocation, usualAllocationWork } from '#cart-allocation';
import { type IntegerProgramSolver } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { folderFrom, median, numberFrom, readArguments, say } from '../arguments.js';
import { randomTowers } from './random-towers.js';

/**
 * Planning-competition blocks problems below --data DIR against shortest.csv there (file, blocks, shortest moves); or with --towers 100,200 random
 * ones, whose shortest plans nobody knows. Seconds of the wall and of the processor: on a busy machine they differ.
 */
export async function run(args: readonly string[]): Promise<number> {
  const values = readArguments(args);
  const integerProgram = await loadIntegerProgramSolver();
  return values.has('towers') ? runTowers(values, integerProgram) : runProblems(values, integerProgram);
}

interface Run {
  readonly moves: number;
  readonly bound: number;
  readonly seconds: number;
  readonly processorSeconds: number;
  readonly stoppedBy: string;
  readonly isMismatch: boolean;
}

type Limits = Omit<Parameters<typeof solveAllocation>[1], 'now'>;

function solved(blocks: BlocksProblem, limits: Limits): Run {
  const problem = allocationCaseOf(blocks);
  const start = performance.now();
  const before = process.cpuUsage();
  const answer = solveAllocation(problem, { ...limits, now: () => performance.now() });
  const used = process.cpuUsage(before);
  return {
    moves: answer.boxMoves,
    bound: answer.bound,
    seconds: (performance.now() - start) / 1000,
    processorSeconds: (used.user + used.system) / 1e6,
    stoppedBy: answer.stoppedBy,
    isMismatch: answer.mismatch.length > 0,
  };
}

function runProblems(values: ReadonlyMap<string, string>, integerProgram: IntegerProgramSolver): number {
  const folder = folderFrom(values);
  const limits = {
    work: numberFrom(values, 'work', usualAllocationWork),
    timeLimitSeconds: numberFrom(values, 'seconds', 10),
    integerProgram,
  };
  const most = numberFrom(values, 'most', 1000);
  const known = shortestOf(folder);
  const rows = readdirSync(folder)
    .filter((each) => each.endsWith('.pddl'))
    .flatMap((name) => {
      const blocks = readBlocksProblem(readFileSync(join(folder, name), 'utf8'));
      const count = blocks.start.flat().length;
      if (count > most) return [];
      const shortest = known.get(name);
      const result = solved(blocks, limits);
      const isOptimal = result.moves === result.bound;
      const isWrong =
        result.isMismatch ||
        (shortest !== undefined && (result.bound > shortest || result.moves < shortest || (isOptimal && result.moves !== shortest)));
      return [{ blocks: count, ...result, known: shortest, isWrong, isOptimal }];
    })
    .sort((a, b) => a.blocks - b.blocks);
  say('blocks  moves  bound  known  seconds  processor');
  for (const row of rows)
    say(
      `${cells([row.blocks, row.moves, row.bound, row.known ?? '-'])}${row.seconds.toFixed(2).padStart(9)}${row.processorSeconds.toFixed(2).padStart(11)}${row.isWrong ? '  WRONG' : ''}`,
    );
  const open = rows.filter((row) => !row.isOptimal).map((row) => row.blocks);
  const wrong = rows.filter((row) => row.isWrong).length;
  say(
    JSON.stringify({
      problems: rows.length,
      proved: rows.length - open.length,
      shortestKnown: rows.filter((row) => row.known !== undefined).length,
      shortestFound: rows.filter((row) => row.moves === row.known).length,
      openAt: open,
      wrong,
      boxMoves: rows.reduce((sum, row) => sum + row.moves, 0),
      ...secondsOf(rows),
    }),
  );
  return wrong === 0 && rows.length > 0 && open.length === 0 ? 0 : 1;
}

function runTowers(values: ReadonlyMap<string, string>, integerProgram: IntegerProgramSolver): number {
  const limits = {
    work: numberFrom(values, 'work', 20 * usualAllocationWork),
    timeLimitSeconds: numberFrom(values, 'seconds', 60),
    integerProgram,
  };
  const seeds = numberFrom(values, 'seeds', 5);
  say('blocks   seed  moves  bound  seconds  processor');
  const summary = values
    .get('towers')!
    .split(',')
    .map(Number)
    .map((blocks) => {
      const runs = Array.from({ length: seeds }, (_, index) => {
        const result = solved(randomTowers(blocks, index + 1), limits);
        say(
          `${cells([blocks, index + 1, result.moves, result.bound])}${result.seconds.toFixed(2).padStart(9)}${result.processorSeconds.toFixed(2).padStart(11)}  ${result.stoppedBy}${result.isMismatch ? '  WRONG' : ''}`,
        );
        return result;
      });
      return {
        blocks,
        seeds,
        proved: runs.filter((each) => each.moves === each.bound).length,
        largestGap: Math.max(...runs.map((each) => each.moves - each.bound)),
        boxMoves: runs.reduce((sum, each) => sum + each.moves, 0),
        ...secondsOf(runs),
        wrong: runs.filter((each) => each.isMismatch).length,
      };
    });
  say(JSON.stringify({ towers: summary }));
  return summary.every((each) => each.wrong === 0) ? 0 : 1;
}

const cells = (values: readonly (number | string)[]): string =>
  values.map((each, index) => String(each).padStart(index === 0 ? 6 : 7)).join('');

const secondsOf = (runs: readonly Run[]) => {
  const round = (seconds: number) => Number(seconds.toFixed(3));
  const worst = (key: 'seconds' | 'processorSeconds') => round(Math.max(...runs.map((each) => each[key])));
  const total = (key: 'seconds' | 'processorSeconds') => round(runs.reduce((sum, each) => sum + each[key], 0));
  return {
    totalSeconds: total('seconds'),
    worstSeconds: worst('seconds'),
    medianSeconds: round(median(runs.map((each) => each.seconds))),
    totalProcessorSeconds: total('processorSeconds'),
    worstProcessorSeconds: worst('processorSeconds'),
  };
};

function shortestOf(folder: string): ReadonlyMap<string, number> {
  const [, ...lines] = readFileSync(join(folder, 'shortest.csv'), 'utf8').trim().split(/\r?\n/);
  return new Map(
    lines.map((line) => {
      const [file, , shortest] = line.split(',');
      return [file!, Number(shortest)] as const;
    }),
  );
}
