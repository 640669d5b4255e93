import { type LossModel, smallestSpares } from './loss-model.js';
import { chooseTrunk } from './trunk-choice.js';

/** Piece-uses of one model in one hang of one leg of the tour. */
export interface SupplyCell {
  readonly hang: string;
  readonly leg: string;
  readonly pieceUses: number;
}

export interface Pooling {
  readonly level: number;
  /** Spares where one stock serves every hang of every leg. */
  readonly together: number;
  /** Fewest spares in all where each hang keeps a stock of its own for the tour, all stocks together at the same level. */
  readonly byHang: number;
  /** The same where each leg is sent out with a stock of its own. */
  readonly byLeg: number;
}

/**
 * What one common stock saves. Separate stocks that all suffice, suffice together as well, so `together` is never more than either sum; the stocks'
 * levels are multiplied, which is exact for a known rate of loss and on the cautious side for a learned one.
 */
export function poolSpares(lossesOf: (pieceUses: number) => LossModel, cells: readonly SupplyCell[], level: number): Pooling {
  const all = cells.reduce((sum, cell) => sum + cell.pieceUses, 0);
  return {
    level,
    together: smallestSpares(lossesOf(all), level).spares,
    byHang: separate(lossesOf, cells, (cell) => cell.hang, level),
    byLeg: separate(lossesOf, cells, (cell) => cell.leg, level),
  };
}

function separate(
  lossesOf: (pieceUses: number) => LossModel,
  cells: readonly SupplyCell[],
  poolOf: (cell: SupplyCell) => string,
  level: number,
): number {
  const pools = new Map<string, number>();
  for (const cell of cells) pools.set(poolOf(cell), (pools.get(poolOf(cell)) ?? 0) + cell.pieceUses);
  if (pools.size === 0) return 0;
  const lines = [...pools.values()].map((pieceUses) => ({ losses: lossesOf(pieceUses), least: 0, weight: 1 }));
  return chooseTrunk(lines, level, 20_000).weight;
}
