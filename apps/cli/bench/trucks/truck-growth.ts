import { solveRows, solveTruckPack, type TruckCase, type TruckPackAnswer, verifyTruckPack } from '#truck-pack';
import { numberFrom, readArguments, say } from '../arguments.js';
import { madeFreight } from './made-tours.js';

/** Growing freight in rows and freely: [--pieces 50,200,800,2000] [--seconds S] [--rounds N]. */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const sizes = (values.get('pieces') ?? '50,200,800,2000').split(',').map(Number);
  const timeLimitSeconds = numberFrom(values, 'seconds', 10);
  const rounds = numberFrom(values, 'rounds', 4);
  let violations = 0;
  const rows = sizes.map((pieces) => {
    const problem = madeFreight(pieces, 1);
    const now = () => performance.now();
    const inRows = timed(problem, () => solveRows(problem, { seed: 1, rounds, timeLimitSeconds, now }));
    const free = timed(problem, () => solveTruckPack(problem, { seed: 1, timeLimitSeconds, now }));
    violations += inRows.violations + free.violations;
    say(`${pieces} pieces: rows ${JSON.stringify(inRows)}, free ${JSON.stringify(free)}`);
    return { pieces, inRows, free };
  });
  say(JSON.stringify({ violations, rows }));
  return violations === 0 ? 0 : 1;
}

function timed(problem: TruckCase, solve: () => TruckPackAnswer | undefined) {
  const start = performance.now();
  const answer = solve();
  const seconds = Number(((performance.now() - start) / 1000).toFixed(2));
  if (!answer) return { seconds, trucks: null, boundTrucks: null, leftOver: problem.pieces.length, gap: null, violations: 0 };
  const used = answer.trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);
  return {
    seconds,
    trucks: answer.trucks.length,
    boundTrucks: answer.bound.trucks,
    leftOver: answer.leftOver.length,
    gap: answer.bound.usedLengthMm === 0 ? null : Number((used / answer.bound.usedLengthMm - 1).toFixed(4)),
    violations: verifyTruckPack(problem, answer).length,
  };
}
