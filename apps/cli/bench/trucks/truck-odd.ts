import { breachOf, english } from '#words';
import { solveRows, solveTruckPack, type TruckPackAnswer } from '#truck-pack';
import { numberFrom, readArguments, say } from '../arguments.js';
import { oddFreight } from './odd-freight.js';

/** Odd but valid cases: each is answered without a fault, agrees with the checker and ends by its work: [--cases N] [--first SEED] [--work STEPS]. */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const cases = numberFrom(values, 'cases', 1000);
  const first = numberFrom(values, 'first', 1);
  const work = numberFrom(values, 'work', 20_000);
  const total = { faults: 0, mismatches: 0, unequal: 0, rode: 0, leftOver: 0 };
  let [longest, longestSeed] = [0, 0];
  for (let seed = first; seed < first + cases; seed++) {
    const problem = oddFreight(seed);
    const begun = performance.now();
    try {
      const answer = solveTruckPack(problem, { seed: 1, work });
      const answers: (TruckPackAnswer | undefined)[] = [answer, solveRows(problem, { seed: 1, rounds: 2, work })];
      for (const each of answers)
        for (const breach of each?.mismatch ?? []) {
          total.mismatches++;
          say(`seed ${seed}: ${breach.subject} ${breachOf(english.breaches, breach)}`);
        }
      if (JSON.stringify(solveTruckPack(problem, { seed: 1, work })) !== JSON.stringify(answer)) total.unequal++;
      total.rode += problem.pieces.length - answer.leftOver.length;
      total.leftOver += answer.leftOver.length;
    } catch (fault) {
      total.faults++;
      say(`seed ${seed}: ${(fault as Error).stack}`);
    }
    const took = performance.now() - begun;
    if (took > longest) [longest, longestSeed] = [took, seed];
  }
  say(JSON.stringify({ cases, ...total, longestSeconds: Number((longest / 1000).toFixed(2)), longestSeed }));
  return total.faults + total.mismatches + total.unequal === 0 ? 0 : 1;
}
