import { judgeLoad, solveRows, solveSmall, readTruckCase, type Piece, type TruckCase } from '#truck-pack';
import { seededRandom } from '#kernel';
import { numberFrom, readArguments, say } from '../arguments.js';

const shapes = [
  [1150, 720],
  [1210, 760],
  [1060, 620],
  [1320, 810],
  [1600, 600],
  [1100, 760],
  [750, 550],
] as const;

/** A few carts and cases on the floor of one truck, three stops; nothing rides on top, no axles. */
function madeLoad(count: number, seed: number): TruckCase {
  const random = seededRandom(1000 * count + seed);
  const own = Array.from({ length: 4 }, () => shapes[Math.floor(random() * shapes.length)]!);
  const pieces = Array.from({ length: count }, (_, index): Partial<Piece> => {
    const [lengthMm, widthMm] = own[Math.floor(random() * own.length)]!;
    const [massKg, firstOff] = [300, 1 + Math.floor(random() * 3)];
    return { id: `P${index + 1}`, lengthMm, widthMm, heightMm: 1500, massKg, mayTurn: true, floorOnly: true, maxOnTopKg: 0, firstOff };
  });
  const truck = { id: 'T1', innerLengthMm: 13_600, innerWidthMm: 2480, innerHeightMm: 2700 };
  const read = readTruckCase({ trucks: [truck], pieces, minSupport: 1 });
  if (!read.ok) throw new Error(JSON.stringify(read.error[0]));
  return read.value;
}

/** Small loads in rows beside the shortest of any arrangement: [--pieces 8,12] [--loads N] [--nodes N]. */
export function run(args: readonly string[]): number {
  const values = readArguments(args);
  const loads = numberFrom(values, 'loads', 10);
  const nodes = numberFrom(values, 'nodes', 400_000);
  let wrong = 0;
  say('pieces  seed   rows  shortest  at least  bound   nodes  processor');
  const summary = (values.get('pieces') ?? '8,12,16').split(',').map((each) => {
    const count = Number(each);
    const sums = { proved: 0, rowsGap: 0, boundGap: 0, leastGap: 0 };
    for (let seed = 1; seed <= loads; seed++) {
      const problem = madeLoad(count, seed);
      const rows = solveRows(problem, { seed: 1, rounds: 12 });
      if (!rows) throw new Error('a small load goes in rows');
      const inRows = rows.trucks[0]!.usedLengthMm;
      const begun = process.cpuUsage();
      const exact = solveSmall(problem, inRows, nodes);
      const used = process.cpuUsage(begun);
      const breaches = exact.placements ? judgeLoad(problem, 'T1', exact.placements).breaches : [];
      wrong += breaches.length + (exact.bound > exact.usedLengthMm || exact.bound < rows.bound.usedLengthMm ? 1 : 0);
      const isProved = exact.bound === exact.usedLengthMm;
      sums.proved += isProved ? 1 : 0;
      sums.rowsGap += inRows / exact.usedLengthMm - 1;
      sums.leastGap += exact.usedLengthMm / exact.bound - 1;
      sums.boundGap += exact.usedLengthMm / rows.bound.usedLengthMm - 1;
      const figures = [count, seed, inRows, exact.usedLengthMm, exact.bound, rows.bound.usedLengthMm, exact.nodes];
      say(
        `${figures.map((figure, index) => String(figure).padStart([6, 6, 7, 10, 10, 7, 8][index]!)).join('')}${((used.user + used.system) / 1e6).toFixed(2).padStart(11)}${breaches[0] ? `  WRONG ${JSON.stringify(breaches[0])}` : ''}`,
      );
    }
    const mean = (sum: number) => Number((sum / loads).toFixed(4));
    return {
      pieces: count,
      loads,
      proved: sums.proved,
      rowsOverShortest: mean(sums.rowsGap),
      shortestOverBoundOnLength: mean(sums.boundGap),
      notProvedOver: mean(sums.leastGap),
    };
  });
  say(JSON.stringify({ nodes, small: summary, wrong }));
  return wrong === 0 ? 0 : 1;
}
