import { invariant } from '#kernel';
import { type LossModel, smallestSpares, tailsOfLosses } from './loss-model.js';
import { cheapestChoice } from './cheapest-choice.js';

/** One line of a trunk: the law of its losses, the fewest spares that it may have, and what one spare weighs or costs (more than 0). */
export interface TrunkLine {
  readonly losses: LossModel;
  readonly least: number;
  readonly weight: number;
}

export interface TrunkChoice {
  /** `optimal`: no choice that reaches the level weighs less. `feasible`: reaches it; none weighs less than `bound`. */
  readonly status: 'optimal' | 'feasible';
  /** Spares by line, in the order of the lines. */
  readonly spares: readonly number[];
  /** Chance that no line runs short: the product of the lines' levels, losses of the lines being independent. */
  readonly level: number;
  /** Sum of spares times weight. */
  readonly weight: number;
  readonly bound: number;
  /** The same sum where every line takes the equal share level^(1/lines). */
  readonly equalShareWeight: number;
}

/** What a line with n spares takes from the level, -ln P(losses <= n): convex and falling in n, since both laws have log-concave sums. */
export function shortfall(losses: LossModel, n: number): number {
  const { atMost, above } = tailsOfLosses(losses, n);
  return above < 0.5 ? -Math.log1p(-above) : -Math.log(atMost);
}

/** Rounding must not cost a spare where the level is met exactly. */
const slack = 1e-12;

export const allowedShortfall = (level: number): number => -Math.log(level) * (1 + slack);

/**
 * Spares of least total weight whose lines together reach the level, 0 < level < 1: marginal analysis (most shortfall saved per weight first),
 * made exact by a search over undominated part choices. `mostStates` limits the search; then the bound of marginal analysis stands.
 */
export function chooseTrunk(lines: readonly TrunkLine[], level: number, mostStates = 100_000): TrunkChoice {
  invariant(level > 0 && level < 1, 'the level of a trunk lies between 0 and 1');
  invariant(
    lines.every((line) => line.weight > 0),
    'every line of a trunk has a weight',
  );
  const allowed = allowedShortfall(level);
  // No product of levels reaches the level unless each of them does.
  const least = lines.map((line) => Math.max(line.least, smallestSpares(line.losses, level).spares));
  const equal = lines.map((line) => Math.max(line.least, smallestSpares(line.losses, level ** (1 / lines.length)).spares));
  const marginal = marginalChoice(lines, least, allowed);
  const weigh = (spares: readonly number[]): number => spares.reduce((sum, n, index) => sum + n * lines[index]!.weight, 0);
  const known = [equal, trimmed(lines, least, marginal.spares, allowed)].sort((a, b) => weigh(a) - weigh(b))[0]!;
  const exact = cheapestChoice(
    lines.map((line, index) => ({ weight: line.weight, least: least[index]!, shortfall: (n) => shortfall(line.losses, n) })),
    allowed,
    known,
    mostStates,
  );
  const weight = weigh(exact.spares);
  return {
    status: exact.complete ? 'optimal' : 'feasible',
    spares: exact.spares,
    level: Math.exp(-exact.spares.reduce((sum, n, index) => sum + shortfall(lines[index]!.losses, n), 0)),
    weight,
    bound: exact.complete ? weight : Math.min(weight, marginal.bound),
    equalShareWeight: weigh(equal),
  };
}

/**
 * Adds, one at a time, the spare that saves most shortfall per weight. The last one taken in part is the optimum of the relaxed problem, so its
 * weight is a bound (each shortfall is convex).
 */
function marginalChoice(
  lines: readonly TrunkLine[],
  least: readonly number[],
  allowed: number,
): { readonly spares: number[]; readonly bound: number } {
  const spares = [...least];
  const at = lines.map((line, index) => shortfall(line.losses, spares[index]!));
  const next = lines.map((line, index) => shortfall(line.losses, spares[index]! + 1));
  let weight = lines.reduce((sum, line, index) => sum + line.weight * spares[index]!, 0);
  let bound = weight;
  for (let total = sum(at); total > allowed; total = sum(at)) {
    let best = 0;
    const gain = (index: number): number => (at[index]! - next[index]!) / lines[index]!.weight;
    for (let index = 1; index < lines.length; index++) if (gain(index) > gain(best)) best = index;
    const saved = at[best]! - next[best]!;
    const share = saved > 0 ? Math.min(1, (total - allowed) / saved) : 1;
    bound = weight + share * lines[best]!.weight;
    weight += lines[best]!.weight;
    spares[best]! += 1;
    at[best] = next[best]!;
    next[best] = shortfall(lines[best]!.losses, spares[best]! + 1);
  }
  return { spares, bound };
}

/** Takes away, heaviest line first, what the level can do without. */
function trimmed(lines: readonly TrunkLine[], least: readonly number[], spares: readonly number[], allowed: number): number[] {
  const left = [...spares];
  const total = (): number => sum(lines.map((line, index) => shortfall(line.losses, left[index]!)));
  const heaviestFirst = lines.map((_, index) => index).sort((a, b) => lines[b]!.weight - lines[a]!.weight);
  for (const index of heaviestFirst)
    while (left[index]! > least[index]!) {
      left[index]! -= 1;
      if (total() <= allowed) continue;
      left[index]! += 1;
      break;
    }
  return left;
}

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);
