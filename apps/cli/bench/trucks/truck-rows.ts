import { breachOf, english } from '#words';
import { solveRows, verifyTruckPack } from '#truck-pack';
import { madeTour } from './made-tours.js';
import { numberFrom, readArguments, say } from '../arguments.js';

/** Sums over all tours, before the first. */
const nothing = {
  violations: 0,
  leftOver: 0,
  leastTrucks: 0,
  gap: 0,
  bound: 0,
  inRows: 0,
  atStops: 0,
  free: 0,
  stacks: 0,
  solved: 0,
  checkedMs: 0,
  clock: 0,
  work: 0,
};

/** Seeded tours in rows: [--tours N] [--first SEED] [--rounds N] [--seconds S] [--last SHARE]: how full the last truck may be by the bound. */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const tours = numberFrom(values, 'tours', 40);
  const first = numberFrom(values, 'first', 1);
  const rounds = numberFrom(values, 'rounds', 12);
  const timeLimitSeconds = numberFrom(values, 'seconds', 5);
  const mostOfLast = numberFrom(values, 'last', 0.25);
  const total = { ...nothing };
  const start = performance.now();
  for (let seed = first; seed < first + tours; seed++) {
    const problem = madeTour(seed, mostOfLast);
    const begun = performance.now();
    const answer = solveRows(problem, { seed: 1, rounds, timeLimitSeconds, now: () => performance.now() });
    const seconds = (performance.now() - begun) / 1000;
    if (!answer) {
      total.leftOver += problem.pieces.length;
      say(`seed ${seed}: ${problem.pieces.length} pieces, no load in rows, ${seconds.toFixed(1)} s`);
      continue;
    }
    const checking = performance.now();
    const wrong = verifyTruckPack(problem, answer);
    total.checkedMs += performance.now() - checking;
    total.clock += answer.stoppedBy === 'clock' ? 1 : 0;
    total.work += answer.work;
    total.violations += wrong.length;
    total.leftOver += answer.leftOver.length;
    if (answer.trucks.length === answer.bound.trucks) total.leastTrucks++;
    const used = answer.trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);
    const gap = used / answer.bound.usedLengthMm - 1;
    const causes = answer.causes!;
    total.solved++;
    total.gap += gap;
    total.bound += answer.bound.usedLengthMm;
    total.inRows += causes.inRowsMm;
    total.atStops += causes.atStopsMm;
    total.stacks += causes.stacksMm;
    total.free += used - answer.bound.usedLengthMm - causes.inRowsMm - causes.atStopsMm - causes.stacksMm;
    say(
      `seed ${seed}: ${problem.pieces.length} pieces, ${answer.trucks.length} trucks (bound ${answer.bound.trucks}), ${used} mm (bound ${answer.bound.usedLengthMm}, gap ${(100 * gap).toFixed(1)} %), ${wrong.length} violations, ${seconds.toFixed(1)} s${wrong[0] ? ` ${wrong[0].subject} ${breachOf(english.breaches, wrong[0])}` : ''}`,
    );
  }
  say(JSON.stringify({ tours, mostOfLast, ...meansOf(total), seconds: Number(((performance.now() - start) / 1000).toFixed(1)) }));
  return total.violations === 0 ? 0 : 1;
}

function meansOf(total: typeof nothing): object {
  const share = (mm: number) => Number((mm / total.bound).toFixed(4));
  return {
    violations: total.violations,
    leftOver: total.leftOver,
    leastTrucks: total.leastTrucks,
    meanGap: Number((total.gap / total.solved).toFixed(4)),
    // Parts of the bound on length: they sum to the gap of all tours together.
    causes: {
      widthLeftInRowsOfOneStop: share(total.inRows),
      rowsWhereAStopEnds: share(total.atStops),
      freeForAxlesOrBlockedPlaces: share(total.free),
      stacksAgainstTheirBound: share(total.stacks),
    },
    // What the checker on duty costs, and how many answers the clock cut short.
    checkMsEach: Number((total.checkedMs / total.solved).toFixed(2)),
    stoppedByClock: total.clock,
    workEach: Math.round(total.work / total.solved),
  };
}
