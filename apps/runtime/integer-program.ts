import loadHighs from 'highs';
import type { IntegerProgramAnswer, IntegerProgramLimits, IntegerProgramSolver } from '#kernel';

/** The part of the package's model that is used; its numbers stand in `highs.constants`. */
interface HighsModel {
  readonly options: { set(values: Record<string, unknown>): unknown };
  readonly info: { get(name: string): number | bigint };
  run(callbacks?: Record<number, (event: { data: Record<string, unknown>; interrupt(): void }) => undefined>): { modelStatus: number };
  getSolution(): { colValue: Float64Array; colDual: Float64Array };
  getDimensions(): { numCols: number };
  getColName(index: number): string;
  dispose(): void;
}

interface Highs {
  readonly constants: { readonly callbackType: { readonly mipInterrupt: number }; readonly modelStatus: Readonly<Record<string, number>> };
  createModel(source: { format: 'lp'; data: Uint8Array }): HighsModel;
}

/**
 * HiGHS (MIT licence), compiled to WebAssembly, as the solver of integer programs; one thread and a fixed seed, so that it does the same again. Loading
 * takes about a tenth of a second. Iterations of an integer program are counted where the solver lets itself be interrupted.
 */
export async function loadIntegerProgramSolver(): Promise<IntegerProgramSolver> {
  const load = loadHighs as unknown as () => Promise<Highs>;
  const highs = await load();
  return { solve: (lpText, limits) => answerOf(highs, lpText, limits) };
}

const nothing = { objective: undefined, bound: undefined, values: new Map<string, number>() };

function answerOf(highs: Highs, lpText: string, limits: IntegerProgramLimits): IntegerProgramAnswer {
  let model: HighsModel | undefined;
  try {
    model = highs.createModel({ format: 'lp', data: new TextEncoder().encode(lpText) });
    return run(highs, model, limits);
  } catch {
    return { status: 'unknown', ...nothing, iterations: 0, isCutOff: false };
  } finally {
    model?.dispose();
  }
}

function run(
  highs: Highs,
  model: HighsModel,
  { timeLimitSeconds, iterations = Infinity, enough, relaxed }: IntegerProgramLimits,
): IntegerProgramAnswer {
  const { callbackType, modelStatus } = highs.constants;
  const most = Math.min(2 ** 31 - 1, Math.max(1, Math.round(iterations)));
  model.options.set({
    output_flag: false,
    time_limit: Math.max(0.01, timeLimitSeconds),
    mip_rel_gap: 0,
    mip_abs_gap: 0.4,
    random_seed: 0,
    simplex_iteration_limit: most,
    ...(relaxed ? { solve_relaxation: true } : {}),
    ...(enough === undefined || relaxed ? {} : { objective_target: enough }),
  });
  const { modelStatus: status } = model.run({
    [callbackType.mipInterrupt]: (event) => {
      if (Number(event.data.mip_total_lp_iterations ?? 0) >= most) event.interrupt();
      return undefined;
    },
  });
  const done = { iterations: Number(model.info.get('simplex_iteration_count')), isCutOff: status === modelStatus.timeLimit };
  if (status === modelStatus.infeasible) return { status: 'infeasible', ...nothing, ...done };
  const hasSolution = Number(model.info.get('primal_solution_status')) === 2;
  const bound = relaxed || status === modelStatus.optimal ? undefined : Number(model.info.get('mip_dual_bound'));
  const known = bound !== undefined && Number.isFinite(bound) ? bound : undefined;
  if (!hasSolution) return { status: 'unknown', ...nothing, bound: known, ...done };
  const objective = Number(model.info.get('objective_function_value'));
  const { colValue, colDual } = model.getSolution();
  const names = Array.from({ length: model.getDimensions().numCols }, (_, index) => model.getColName(index));
  const named = (numbers: Float64Array) => new Map(names.map((name, index) => [name, numbers[index]!]));
  const values = named(colValue);
  const costs = relaxed ? { reducedCosts: named(colDual) } : {};
  if (status === modelStatus.optimal) return { status: 'optimal', objective, bound: objective, values, ...costs, ...done };
  // A relaxation that was cut off has a basis, but bounds nothing.
  return relaxed ? { status: 'unknown', ...nothing, ...done } : { status: 'feasible', objective, bound: known, values, ...done };
}
