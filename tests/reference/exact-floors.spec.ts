import { type IntegerProgramSolver, seededRandom } from '#kernel';
import { loadIntegerProgramSolver } from '#runtime';
import { readTruckCase, solveRows, solveTruckPack, type TruckCase, type TruckPackAnswer, verifyTruckPack } from '#truck-pack';

/** Sizes in steps of 100 mm, so that a whole number of steps is the optimum. */
const step = 100;
const widthSteps = 24;

let integerProgram: IntegerProgramSolver;
beforeAll(async () => {
  integerProgram = await loadIntegerProgramSolver();
});

function tiny(seed: number): TruckCase {
  const random = seededRandom(seed);
  const between = (low: number, high: number) => step * (low + Math.floor(random() * (high - low + 1)));
  const pieces = Array.from({ length: 4 + (seed % 2) }, (_, index) => ({
    id: `P${index}`,
    lengthMm: between(5, 14),
    widthMm: between(5, 14),
    heightMm: 1500,
    massKg: 100,
    mayTurn: random() < 0.7,
    firstOff: 1 + Math.floor(random() * 2),
    floorOnly: true,
    maxOnTopKg: 0,
  }));
  const truck = { id: 'T', innerLengthMm: 8000, innerWidthMm: step * widthSteps, innerHeightMm: 2000 };
  const read = readTruckCase({ trucks: [truck], pieces });
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

/**
 * The shortest load of pieces on the floor as an integer program: for each pair one is left, right, ahead of or behind the other; "behind" is left out where the one behind would
 * come off later. Turned pieces by a 0-1 variable.
 */
function shortestMm({ pieces }: TruckCase): number {
  const big = 100;
  const rows: string[] = [];
  const binaries: string[] = [];
  const side = pieces.map((piece, index) => {
    const [l, w] = [piece.lengthMm / step, piece.widthMm / step];
    if (!piece.mayTurn || l === w) return { l, w, turn: 0, name: '' };
    binaries.push(`t${index}`);
    return { l, w, turn: w - l, name: `t${index}` };
  });
  const plus = (factor: number, name: string) =>
    factor === 0 || name === '' ? '' : ` ${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`;
  side.forEach(({ l, w, turn, name }, i) => {
    rows.push(`x${i}${plus(turn, name)} - L <= ${-l}`, `y${i}${plus(-turn, name)} <= ${widthSteps - w}`);
  });
  for (let i = 0; i < pieces.length; i++)
    for (let j = i + 1; j < pieces.length; j++) {
      const choices: string[] = [];
      for (const [a, b] of [
        [i, j],
        [j, i],
      ] as const) {
        // a ahead of b, nearer the nose: then b must not come off later than a.
        if (pieces[b]!.firstOff <= pieces[a]!.firstOff) {
          choices.push(`f${a}_${b}`);
          rows.push(`x${a}${plus(side[a]!.turn, side[a]!.name)} - x${b} + ${big} f${a}_${b} <= ${big - side[a]!.l}`);
        }
        choices.push(`s${a}_${b}`);
        rows.push(`y${a}${plus(-side[a]!.turn, side[a]!.name)} - y${b} + ${big} s${a}_${b} <= ${big - side[a]!.w}`);
      }
      binaries.push(...choices);
      rows.push(`${choices.join(' + ')} >= 1`);
    }
  const text = `Minimize\n obj: L\nSubject To\n${rows.map((row, index) => ` c${index}: ${row}`).join('\n')}\nBinaries\n ${binaries.join('\n ')}\nEnd\n`;
  const answer = integerProgram.solve(text, { timeLimitSeconds: 30 });
  if (answer.status !== 'optimal') throw new Error(answer.status);
  return step * Math.round(answer.objective!);
}

const lengthOf = (answer: TruckPackAnswer): number => answer.trucks.reduce((sum, each) => sum + each.usedLengthMm, 0);

describe('loads on the floor, held against an integer program that solves them exactly (HiGHS)', () => {
  it('are never shorter than the optimum, the bound never above it; most free loads are optimal, and rows come close', () => {
    let [free, rows, optimal] = [0, 0, 0];
    const seeds = Array.from({ length: 16 }, (_, index) => index + 1);
    for (const seed of seeds) {
      const problem = tiny(seed);
      const least = shortestMm(problem);
      const answer = solveTruckPack(problem, { seed: 1, rounds: 14 });
      const inRows = solveRows(problem, { seed: 1, rounds: 4 })!;
      for (const each of [answer, inRows]) {
        expect(verifyTruckPack(problem, each)).toEqual([]);
        expect(each.leftOver).toEqual([]);
        expect(lengthOf(each)).toBeGreaterThanOrEqual(least);
        expect(each.bound.usedLengthMm).toBeLessThanOrEqual(least);
      }
      free += lengthOf(answer) / least;
      rows += lengthOf(inRows) / least;
      if (lengthOf(answer) === least) optimal++;
    }
    expect(optimal).toBeGreaterThanOrEqual(seeds.length - 1);
    expect(free / seeds.length).toBeLessThan(1.01);
    expect(rows / seeds.length).toBeLessThan(1.12);
  });
});
