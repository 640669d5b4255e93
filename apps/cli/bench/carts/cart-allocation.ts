import { readFileSync, readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { naiveBoxMoves, readAllocationCase, solveAllocation, usualAllocationWork, verifyAllocation } from '#cart-allocation';
import { loadIntegerProgramSolver } from '#runtime';
import { folderFrom, median, numberFrom, readArguments, say } from '../arguments.js';

/**
 * Cases below --data DIR (recursively), against the known optima in the optimal.json beside them. Wrong: an answer that fails the checker,
 * that is not the optimum or claims a bound above it, or that misses what is infeasible.
 */
export async function run(args: readonly string[]): Promise<number> {
  const values = readArguments(args);
  const folder = folderFrom(values);
  const seconds = numberFrom(values, 'seconds', 10);
  const work = numberFrom(values, 'work', usualAllocationWork);
  const integerProgram = await loadIntegerProgramSolver();
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /case[^/]*\.json$/.test(name));
  let [optimal, wrong, boxMoves, naive, infeasible] = [0, 0, 0, 0, 0];
  const times: number[] = [];
  const stoppedBy = { proof: 0, work: 0, clock: 0 };
  let [checking, mostWork] = [0, 0];
  for (const name of files.sort()) {
    const file = join(folder, name);
    const known = optimumOf(file);
    const read = readAllocationCase(JSON.parse(readFileSync(file, 'utf8')));
    if (!read.ok) {
      wrong++;
      say(`${name}: malformed, ${read.error[0]!.field}`);
      continue;
    }
    const start = performance.now();
    const answer = solveAllocation(read.value, { work, timeLimitSeconds: seconds, now: () => performance.now(), integerProgram });
    times.push(performance.now() - start);
    const checked = performance.now();
    const [fault] = verifyAllocation(read.value, answer);
    checking += performance.now() - checked;
    stoppedBy[answer.stoppedBy]++;
    mostWork = Math.max(mostWork, answer.measures.work);
    const misses = known === null ? answer.status !== 'infeasible' : answer.status === 'infeasible' || answer.bound > known;
    if (fault || misses || (known !== null && answer.status === 'optimal' && answer.boxMoves !== known)) {
      wrong++;
      say(
        `${name}: ${fault ? JSON.stringify(fault) : `${answer.status}, ${answer.boxMoves} moves, bound ${answer.bound}; known ${known}`}`,
      );
    }
    if (answer.status === 'infeasible') {
      infeasible++;
      continue;
    }
    if (answer.status === 'optimal' && answer.boxMoves === known) optimal++;
    boxMoves += answer.boxMoves;
    naive += naiveBoxMoves(read.value);
  }
  say(
    JSON.stringify({
      cases: files.length,
      optimal,
      infeasible,
      wrong,
      stoppedBy,
      mostWork,
      medianMs: Number(median(times).toFixed(2)),
      slowestMs: Number(Math.max(...times).toFixed(2)),
      checkingShare: Number((checking / times.reduce((sum, each) => sum + each, 0)).toFixed(4)),
      boxMoves,
      naiveBoxMoves: naive,
    }),
  );
  return wrong === 0 && files.length > 0 ? 0 : 1;
}

/** The fewest box moves on file in optimal.json beside the case. null: infeasible. */
function optimumOf(file: string): number | null {
  const table = JSON.parse(readFileSync(join(dirname(file), 'optimal.json'), 'utf8')) as Record<string, unknown>;
  const entry = table[basename(file, '.json')] as { readonly boxMoves: number | null } | undefined;
  if (entry === undefined) throw new Error(`optimal.json has no line for ${basename(file)}`);
  return entry.boxMoves;
}
