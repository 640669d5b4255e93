import type { IntegerProgramSolver } from '#kernel';
import { type Demand, daysOf } from './demand.js';
import type { SeenAnswer } from './fewest-seen.js';
import { type Mask, listOf, makeMask } from './masks.js';

interface Days {
  readonly chosen: readonly number[];
  readonly atLeast: number;
}

const limits = { timeLimitSeconds: 6, iterations: 60_000 };
const examinationLimits = { timeLimitSeconds: 2, iterations: 4_000 };

/** Length of a program that is still worth asking. */
const mostText = 400_000;

/** The fewest days as an integer program: one column a day, one row a set. Gives what was known where the solver comes to no more. */
export function daysByProgram(rows: readonly Mask[], dayCount: number, known: Days, solver: IntegerProgramSolver): Days {
  const none = makeMask(dayCount);
  const all = Array.from({ length: dayCount }, (_, day) => `d${day}`);
  const sets = rows.map(
    (row, index) =>
      `c${index}: ${listOf(row, none)
        .map((day) => `d${day}`)
        .join(' + ')} >= 1`,
  );
  const text = ['Minimize', `obj: ${all.join(' + ')}`, 'Subject To', ...sets, 'Binary', all.join(' '), 'End'].join('\n');
  const { values, bound, status } = solver.solve(text, limits);
  const days = all.flatMap((name, day) => ((values.get(name) ?? 0) > 0.5 ? [day] : []));
  const isBetter =
    (status === 'optimal' || status === 'feasible') &&
    days.length < known.chosen.length &&
    rows.every((row) => listOf(row, none).some((day) => days.includes(day)));
  const chosen = isBetter ? days : known.chosen;
  const proven = bound === undefined ? known.atLeast : Math.max(known.atLeast, Math.ceil(bound - 1e-4));
  return { chosen, atLeast: Math.min(proven, chosen.length) };
}

/** The fewest examinations on so many days, as an integer program: a column a day, and one a demand and day on which it is seen. */
export function examinationsByProgram(
  demands: readonly Demand[],
  dayCount: number,
  known: SeenAnswer,
  solver: IntegerProgramSolver,
): SeenAnswer {
  const terms: string[] = [];
  const rows: string[] = [];
  demands.forEach(({ items, seen, spans }, number) => {
    const own = new Set<number>();
    for (const [from, to] of spans) {
      const days = (seen ?? Array.from({ length: dayCount }, (_, at) => at)).filter((at) => at >= from && at <= to);
      for (const day of days) own.add(day);
      rows.push(`${days.map((day) => `x${number}_${day}`).join(' + ')} >= 1`);
    }
    for (const day of own) {
      terms.push(`${items} x${number}_${day}`);
      rows.push(`d${day} - x${number}_${day} >= 0`);
    }
  });
  const all = Array.from({ length: dayCount }, (_, day) => `d${day}`);
  rows.push(`${all.join(' + ')} <= ${known.chosen.length}`);
  const text = [
    'Minimize',
    `obj: ${terms.join(' + ')}`,
    'Subject To',
    ...rows.map((row, index) => `c${index}: ${row}`),
    // Whole days make whole examinations: the days of a demand's spans stand in one order.
    'Binary',
    all.join('\n'),
    'End',
  ].join('\n');
  if (text.length > mostText) return known;
  const { values, bound } = solver.solve(text, examinationLimits);
  const days = all.flatMap((name, day) => ((values.get(name) ?? 0) > 0.5 ? [day] : []));
  const counts = demands.map((demand) => (daysOf(demand, days)?.length ?? Number.POSITIVE_INFINITY) * demand.items);
  const examinations = counts.reduce((sum, each) => sum + each, 0);
  const best = days.length <= known.chosen.length && examinations < known.examinations ? { chosen: days, examinations } : known;
  const proven = bound === undefined ? known.examinationsAtLeast : Math.max(known.examinationsAtLeast, Math.ceil(bound - 1e-4));
  return { chosen: best.chosen, examinations: best.examinations, examinationsAtLeast: Math.min(proven, best.examinations) };
}
