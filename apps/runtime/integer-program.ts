import loadHighs from 'highs';
import type { IntegerProgramAnswer, IntegerProgramSolver } from '#kernel';

interface HighsAnswer {
  Status: string;
  ObjectiveValue: number;
  Columns: Record<string, { Primal?: number }>;
}

interface Highs {
  solve(model: string, options: Record<string, unknown>): HighsAnswer;
}

/** HiGHS, compiled to WebAssembly, as the solver of integer programs; loading takes about a tenth of a second. */
export async function loadIntegerProgramSolver(): Promise<IntegerProgramSolver> {
  const load = loadHighs as unknown as () => Promise<Highs>;
  const highs = await load();
  return { solve: (lpText, options) => answerOf(highs, lpText, options) };
}

function answerOf(
  highs: Highs,
  lpText: string,
  { timeLimitSeconds, relaxed }: { timeLimitSeconds: number; relaxed?: boolean },
): IntegerProgramAnswer {
  const options = {
    output_flag: false,
    time_limit: Math.max(0.01, timeLimitSeconds),
    mip_rel_gap: 0,
    mip_abs_gap: 0.4,
    random_seed: 0,
    threads: 1,
    ...(relaxed ? { solve_relaxation: true } : {}),
  };
  let answer: HighsAnswer;
  try {
    answer = highs.solve(lpText, options);
  } catch {
    return { status: 'unknown', objective: undefined, bound: undefined, values: new Map() };
  }
  const values = new Map(Object.entries(answer.Columns ?? {}).map(([column, { Primal }]) => [column, Primal ?? 0]));
  if (answer.Status === 'Optimal') return { status: 'optimal', objective: answer.ObjectiveValue, bound: answer.ObjectiveValue, values };
  if (answer.Status === 'Time limit reached' && Number.isFinite(answer.ObjectiveValue))
    return { status: 'feasible', objective: answer.ObjectiveValue, bound: undefined, values };
  if (answer.Status === 'Infeasible') return { status: 'infeasible', objective: undefined, bound: undefined, values: new Map() };
  return { status: 'unknown', objective: undefined, bound: undefined, values: new Map() };
}
