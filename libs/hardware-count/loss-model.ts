import { type Tails, negativeBinomialTails, poissonTails } from './distribution-tails.js';

/**
 * How many pieces are lost or fail in a period of supply.
 * `poisson`: a known mean. `gamma-poisson`: the loss per piece-use is itself only known as a gamma (shape, rate in
 * piece-uses); the number lost in `pieceUses` to come is then negative binomial.
 */
export type LossModel =
  | { readonly kind: 'poisson'; readonly mean: number }
  | { readonly kind: 'gamma-poisson'; readonly shape: number; readonly rate: number; readonly pieceUses: number };

export const meanLosses = (model: LossModel): number =>
  model.kind === 'poisson' ? model.mean : (model.shape / model.rate) * model.pieceUses;

/** P(losses <= n) and P(losses > n). */
export function tailsOfLosses(model: LossModel, n: number): Tails {
  if (model.kind === 'poisson') return poissonTails(n, model.mean);
  const all = model.rate + model.pieceUses;
  return negativeBinomialTails(n, model.shape, model.rate / all, model.pieceUses / all);
}

/** Rounding must not cost a spare where a level is met exactly: one part in 10^12 of what may be missed. */
const slack = 1e-12;

export function reachesLevel(tails: Tails, level: number): boolean {
  return level > 0.5 ? tails.above <= (1 - level) * (1 + slack) : tails.atMost >= level * (1 - slack);
}

/** Smallest number of spares n with P(losses <= n) >= level, 0 < level < 1; by doubling and halving, so no mean makes it slow. */
export function smallestSpares(model: LossModel, level: number): { readonly spares: number; readonly levelReached: number } {
  const reaches = (n: number): boolean => reachesLevel(tailsOfLosses(model, n), level);
  let short = -1;
  let enough = Math.floor(meanLosses(model));
  for (let step = 1; !reaches(enough); step *= 2) {
    short = enough;
    enough += step;
  }
  while (enough - short > 1) {
    const middle = short + Math.floor((enough - short) / 2);
    if (reaches(middle)) enough = middle;
    else short = middle;
  }
  return { spares: enough, levelReached: tailsOfLosses(model, enough).atMost };
}
