/** A line as the search sees it: weight of one, fewest allowed, and a convex falling shortfall of n. */
export interface ChoiceLine {
  readonly weight: number;
  readonly least: number;
  readonly shortfall: (n: number) => number;
}

interface State {
  readonly weight: number;
  readonly shortfall: number;
  readonly taken: number;
  readonly before: State | null;
}

interface Step {
  readonly weight: number;
  readonly saved: number;
}

/**
 * The choice of least weight whose shortfalls sum to at most `allowed`; `known` is one that does. Line by line, part choices that another beats in
 * both weight and shortfall are dropped, and those that cannot end below the known weight: what the lines to come need at least is the relaxed optimum of
 * their steps. `complete` false: more than `mostStates` part choices were left; `known` is given back.
 */
export function cheapestChoice(
  lines: readonly ChoiceLine[],
  allowed: number,
  known: readonly number[],
  mostStates: number,
): { readonly spares: readonly number[]; readonly complete: boolean } {
  const limit = known.reduce((sum, n, index) => sum + n * lines[index]!.weight, 0);
  const rests = lines.map((_, index) => restOf(lines.slice(index + 1), allowed, limit));
  let states: State[] = [{ weight: 0, shortfall: 0, taken: 0, before: null }];
  for (const [index, line] of lines.entries()) {
    const grown: State[] = [];
    for (const state of states) {
      for (let n = line.least; ; n++) {
        const weight = state.weight + n * line.weight;
        const shortfall = state.shortfall + line.shortfall(n);
        if (shortfall <= allowed && weight + rests[index]!(allowed - shortfall) < limit * (1 - 1e-12))
          grown.push({ weight, shortfall, taken: n, before: state });
        if (weight + rests[index]!(Infinity) >= limit || line.shortfall(n) < allowed * 1e-14) break;
        if (grown.length > 20 * mostStates) return { spares: known, complete: false };
      }
    }
    states = undominated(grown);
    if (states.length > mostStates) return { spares: known, complete: false };
  }
  const best = states[0];
  return { spares: best ? takenBy(best) : known, complete: true };
}

/** Lightest first, each with less shortfall than all that are lighter. */
function undominated(states: State[]): State[] {
  states.sort((a, b) => a.weight - b.weight || a.shortfall - b.shortfall);
  let least = Infinity;
  return states.filter((state) => {
    if (state.shortfall >= least) return false;
    least = state.shortfall;
    return true;
  });
}

function takenBy(last: State): number[] {
  const taken: number[] = [];
  for (let at: State = last; at.before !== null; at = at.before) taken.unshift(at.taken);
  return taken;
}

/** Least weight that some lines need for a shortfall of at most so much, their steps taken best first and the last one in part. */
function restOf(lines: readonly ChoiceLine[], allowed: number, limit: number): (allowedShortfall: number) => number {
  const base = lines.reduce((sum, line) => sum + line.least * line.weight, 0);
  const start = lines.reduce((sum, line) => sum + line.shortfall(line.least), 0);
  const steps = lines.flatMap((line): Step[] => {
    const mine: Step[] = [];
    for (let n = line.least; (n + 1 - line.least) * line.weight + base <= limit; n++) {
      const [here, next] = [line.shortfall(n), line.shortfall(n + 1)];
      mine.push({ weight: line.weight, saved: here - next });
      if (next < allowed * 1e-14) break;
    }
    return mine;
  });
  steps.sort((a, b) => b.saved / b.weight - a.saved / a.weight);
  const [weights, saved] = [[base], [0]];
  for (const step of steps) {
    weights.push(weights.at(-1)! + step.weight);
    saved.push(saved.at(-1)! + step.saved);
  }
  return (allowedShortfall) => {
    const need = start - allowedShortfall;
    if (need <= 0) return base;
    let [low, high] = [0, saved.length - 1];
    // What the listed steps cannot save weighs more than the limit.
    if (saved[high]! < need * (1 - 1e-9)) return Infinity;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (saved[middle]! >= need) high = middle;
      else low = middle;
    }
    const step = saved[high]! - saved[low]!;
    return weights[low]! + (step > 0 ? Math.min(1, (need - saved[low]!) / step) : 0) * (weights[high]! - weights[low]!);
  };
}
