import { type LearnedLosses, type LossRecord, learnLosses } from './learned-losses.js';
import { type LossModel, meanLosses, smallestSpares, tailsOfLosses } from './loss-model.js';
import { type Pooling, type SupplyCell, poolSpares } from './pool-spares.js';
import { chooseTrunk } from './trunk-choice.js';

/** How the losses of one line are known: a loss per use, or what was believed and what was counted since. */
export type LossKnowledge = { readonly lossPerUse: number } | { readonly prior: LossRecord; readonly counted?: LossRecord };

export interface SpareLine {
  readonly key: string;
  readonly knowledge: LossKnowledge | null;
  /** The level wanted for this line alone; null where only the trunk's counts. */
  readonly level: number | null;
  /** At least one spare. */
  readonly stopsAShow: boolean;
  /** Pieces of one whole joint of every hang. */
  readonly fullSets: number;
  /** Mass or cost of one; null where none is on file. */
  readonly weight: number | null;
  /** Fitted pieces by hang and leg, over the supply period. */
  readonly cells: readonly SupplyCell[];
}

export interface SpareNumber {
  readonly key: string;
  readonly spares: number;
  /** What the number may not fall below, and why. */
  readonly least: number;
  /** Chance that the spares suffice; null where no losses are on file. */
  readonly levelReached: number | null;
  readonly mean: number | null;
  readonly pooling: Pooling | null;
  readonly learned: (LearnedLosses & { readonly sparesByPriorAlone: number }) | null;
}

export interface TrunkAnswer {
  /** The level wanted for the whole trunk; null where each line has its own only. */
  readonly wanted: number | null;
  /** Chance that no line with known losses runs short, lines taken as independent; null where none has. */
  readonly level: number | null;
  /** Mass or cost of the chosen spares of the lines that have one on file, the proven least, and what equal shares of the level would need. */
  readonly weight: number;
  readonly bound: number;
  readonly equalShareWeight: number;
  readonly status: 'optimal' | 'feasible';
  /** Lines without a figure on file take the equal share of the level and are left out of the weighing. */
  readonly unweighed: readonly string[];
}

export interface SparesPlan {
  readonly lines: readonly SpareNumber[];
  readonly trunk: TrunkAnswer;
}

/** Spares of every line: never fewer than its own level, one of what stops a show and one joint set a hang ask for; then the trunk's level at least weight. */
export function planSpares(lines: readonly SpareLine[], trunkLevel: number | null): SparesPlan {
  const chosen = choose(lines, trunkLevel);
  const byPriorAlone = choose(
    lines.map((line) => ({ ...line, knowledge: withoutCounts(line.knowledge) })),
    trunkLevel,
  );
  const numbers = lines.map((line, index): SpareNumber => {
    const { knowledge } = line;
    const spares = chosen.spares[index]!;
    const losses = lossesOf(line);
    const level = line.level ?? trunkLevel;
    return {
      key: line.key,
      spares,
      least: leastOf(line),
      levelReached: losses && tailsOfLosses(losses, spares).atMost,
      mean: losses && meanLosses(losses),
      pooling: knowledge && level !== null ? poolSpares((pieceUses) => lawOf(knowledge, pieceUses), line.cells, level) : null,
      learned:
        knowledge && 'prior' in knowledge
          ? { ...learnLosses(knowledge.prior, knowledge.counted), sparesByPriorAlone: byPriorAlone.spares[index]! }
          : null,
    };
  });
  const levels = numbers.map((each) => each.levelReached).filter((each) => each !== null);
  const { spares: _spares, ...weighing } = chosen;
  return {
    lines: numbers,
    trunk: { wanted: trunkLevel, level: levels.length > 0 ? levels.reduce((product, each) => product * each, 1) : null, ...weighing },
  };
}

function choose(
  lines: readonly SpareLine[],
  trunkLevel: number | null,
): Omit<TrunkAnswer, 'wanted' | 'level'> & { readonly spares: readonly number[] } {
  const spares = lines.map((line) => leastOf(line));
  const known = lines.map((_, index) => index).filter((index) => lines[index]!.knowledge !== null);
  const weighed = known.filter((index) => (lines[index]!.weight ?? 0) > 0);
  const unweighed = known.filter((index) => !weighed.includes(index));
  const weigh = (numbers: readonly number[]): number => weighed.reduce((sum, index) => sum + numbers[index]! * lines[index]!.weight!, 0);
  if (trunkLevel === null) {
    const weight = weigh(spares);
    return {
      spares,
      weight,
      bound: weight,
      equalShareWeight: weight,
      status: 'optimal',
      unweighed: unweighed.map((index) => lines[index]!.key),
    };
  }
  const share = trunkLevel ** (1 / Math.max(1, known.length));
  let left = trunkLevel;
  for (const index of unweighed) {
    const losses = lossesOf(lines[index]!)!;
    spares[index] = Math.max(spares[index]!, smallestSpares(losses, share).spares);
    left /= tailsOfLosses(losses, spares[index]).atMost;
  }
  const names = unweighed.map((index) => lines[index]!.key);
  if (weighed.length === 0) return { spares, weight: 0, bound: 0, equalShareWeight: 0, status: 'optimal', unweighed: names };
  const choice = chooseTrunk(
    weighed.map((index) => ({ losses: lossesOf(lines[index]!)!, least: spares[index]!, weight: lines[index]!.weight! })),
    left,
  );
  weighed.forEach((index, at) => (spares[index] = choice.spares[at]!));
  const { weight, bound, equalShareWeight, status } = choice;
  return { spares, weight, bound, equalShareWeight, status, unweighed: names };
}

function leastOf(line: SpareLine): number {
  const losses = lossesOf(line);
  return Math.max(line.fullSets, line.stopsAShow ? 1 : 0, losses && line.level !== null ? smallestSpares(losses, line.level).spares : 0);
}

const lossesOf = (line: SpareLine): LossModel | null =>
  line.knowledge &&
  lawOf(
    line.knowledge,
    line.cells.reduce((sum, cell) => sum + cell.pieceUses, 0),
  );

function lawOf(knowledge: LossKnowledge, pieceUses: number): LossModel {
  if ('lossPerUse' in knowledge) return { kind: 'poisson', mean: pieceUses * knowledge.lossPerUse };
  const { prior, counted = { losses: 0, uses: 0 } } = knowledge;
  return { kind: 'gamma-poisson', shape: prior.losses + counted.losses, rate: prior.uses + counted.uses, pieceUses };
}

const withoutCounts = (knowledge: LossKnowledge | null): LossKnowledge | null =>
  knowledge && 'prior' in knowledge ? { prior: knowledge.prior } : knowledge;
