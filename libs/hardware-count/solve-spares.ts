import { meanLosses, smallestSpares } from './loss-model.js';
import { type SparesCase, lossModelOf } from './spares-case.js';

export interface SparesAnswer {
  readonly lines: readonly {
    readonly item: string;
    /** Expected losses over the uses of the line. */
    readonly mean: number;
    /** Smallest n with P(losses <= n) >= level. */
    readonly spares: number;
    readonly levelReached: number;
  }[];
  /** Chance that no line runs short, lines being independent. */
  readonly trunkLevel: number;
}

/** Spares of every line (Poisson, or negative binomial where the loss per use is learned) and the level of all lines together. */
export function solveSpares(sparesCase: SparesCase): SparesAnswer {
  const lines = sparesCase.lines.map((line) => {
    const model = lossModelOf(line);
    return { item: line.item, mean: meanLosses(model), ...smallestSpares(model, line.level) };
  });
  return { lines, trunkLevel: lines.reduce((product, line) => product * line.levelReached, 1) };
}
