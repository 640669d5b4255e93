import type { IntegerProgramSolver } from '#kernel';
import { type PackPlan, makePackPlan, makeSteadyPlan, replanTrucks } from '#pack-plan';
import { readTourFile } from '#tour-file';

export type DamageAnswer =
  | { readonly is: 'refused'; readonly fields: readonly string[] }
  | { readonly is: 'planned'; readonly plans: readonly PackPlan[] };

/**
 * What Cartwright says to a damaged tour: a refusal that names fields, or every way of planning its first show: fresh, with the boxes of an earlier plan in
 * their places, when one of its boxes has failed, and with its trucks loaded anew. It never throws.
 */
export function answerDamaged(
  file: unknown,
  earlier: PackPlan,
  failed: string,
  integerProgram: IntegerProgramSolver,
  seconds: number,
): DamageAnswer {
  const read = readTourFile(file);
  if (!read.ok) return { is: 'refused', fields: read.error.map((each) => each.field) };
  const { shows } = read.value.tour;
  const showId = (shows.find((each) => each.id === earlier.show.id) ?? shows[0]!).id;
  // A stated amount of work; the clock is only a cap.
  const limits = { now: () => performance.now(), integerProgram, timeLimitSeconds: seconds, work: 300_000 };
  const fresh = makePackPlan(read.value, showId, limits);
  return {
    is: 'planned',
    plans: [
      fresh,
      makeSteadyPlan(read.value, showId, limits, earlier),
      makePackPlan(read.value, showId, limits, { plan: earlier, failed: new Set([failed]) }),
      replanTrucks(read.value, fresh, limits),
    ],
  };
}
