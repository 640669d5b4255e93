import { type HangCase, type HangStage, type StagePlan, bodiesAt, place, radians, solveStages, together } from '#hang-statics';
import type { RiggingSystem } from '#tour-file';
import type { LiftRemedy } from '#trade';

/** The tilts between which a rigging system is worked, nose down positive; null where its manual has not been filed. */
export interface WorkingTilt {
  readonly fromDeg: number | null;
  readonly toDeg: number | null;
}

export const workingTiltOf = (system: RiggingSystem | undefined): WorkingTilt => ({
  fromDeg: system?.mostNoseUpDeg === undefined ? null : -system.mostNoseUpDeg,
  toDeg: system?.mostNoseDownDeg ?? null,
});

const isWithin = (tiltDeg: number, { fromDeg, toDeg }: WorkingTilt): boolean =>
  (fromDeg === null || tiltDeg >= fromDeg - 1e-9) && (toDeg === null || tiltDeg <= toDeg + 1e-9);

/** Moments of lifting and coming down at which the grid stands beyond what its system is worked at. */
export const beyondTilt = (stages: readonly HangStage[], limits: WorkingTilt): readonly HangStage[] =>
  stages.filter((each) => each.cartLoad !== null && !isWithin(each.answer.tiltDownDeg, limits));

/** The moment of lifting at which the grid stands furthest from level. */
export const mostTilted = (stages: readonly HangStage[]): HangStage | undefined =>
  stages
    .filter((each) => each.cartLoad !== null)
    .reduce<HangStage | undefined>((a, b) => (a && Math.abs(a.answer.tiltDownDeg) >= Math.abs(b.answer.tiltDownDeg) ? a : b), undefined);

/** What would do, each tried through every moment: none pushes, and the grid stays within its working tilt. */
export function liftRemedies(problem: HangCase, plan: StagePlan, limits: WorkingTilt): readonly LiftRemedy[] {
  const does = (changed: HangCase, way: StagePlan) => isLiftable(changed, way, limits);
  return problem.picks.length === 1 ? onOnePick(problem, plan, limits, does) : onTwoPicks(problem, plan, limits, does);
}

type Does = (changed: HangCase, way: StagePlan) => boolean;

const isLiftable = (problem: HangCase, plan: StagePlan, limits: WorkingTilt): boolean =>
  solveStages(problem, plan).stages.every(
    (each) =>
      each.cartLoad === null || (isWithin(each.answer.tiltDownDeg, limits) && each.answer.picks.every((pick) => pick.reactionN >= 0)),
  );

function onOnePick(problem: HangCase, plan: StagePlan, limits: WorkingTilt, does: Does): readonly LiftRemedy[] {
  const [pick] = problem.picks;
  const behind = [...problem.grid.holes].sort((a, b) => a.behindMm - b.behindMm);
  const holes = behind
    .map((each) => each.hole)
    .filter((hole) => hole !== pick!.hole && does({ ...problem, picks: [{ ...pick!, hole }] }, plan));
  const [front, rear] = [behind[0]!, behind.at(-1)!];
  const level = clamped(0, limits);
  const two = { ...problem, tiltDownDeg: level, picks: [front, rear].map(({ hole }) => ({ ...pick!, hole })) };
  const smaller = smallestFirst(plan);
  return [
    ...(holes.length > 0 ? [{ code: 'hole' as const, holes }] : []),
    ...(front !== rear && does(two, { ...plan, liftTiltDownDeg: level })
      ? [{ code: 'two-points' as const, holes: [front.hole, rear.hole] }]
      : []),
    ...(smaller && does(problem, smaller) ? [{ code: 'smaller-cart-first' as const }] : []),
  ];
}

function onTwoPicks(problem: HangCase, plan: StagePlan, limits: WorkingTilt, does: Does): readonly LiftRemedy[] {
  // Every half degree ten degrees either way.
  const tilts = Array.from({ length: 41 }, (_, index) => index / 2 - 10).filter(
    (each) => isWithin(each, limits) && does({ ...problem, tiltDownDeg: problem.tiltDownDeg ?? each }, { ...plan, liftTiltDownDeg: each }),
  );
  const nearest = tilts.reduce<number | null>(
    (best, each) => (best === null || Math.abs(each - plan.liftTiltDownDeg) < Math.abs(best - plan.liftTiltDownDeg) ? each : best),
    null,
  );
  const named = problem.picks.map((each) => each.hole);
  const pairs = problem.picks.flatMap((pick, index) =>
    problem.grid.holes
      .filter((each) => !named.includes(each.hole))
      .map((each) => problem.picks.map((own, at) => (at === index ? { ...pick, hole: each.hole } : own)))
      .filter((picks) => does({ ...problem, picks }, plan))
      .map((picks) => picks.map((each) => each.hole)),
  );
  const smaller = smallestFirst(plan);
  return [
    ...(nearest === null ? [] : [{ code: 'lift-tilt' as const, tiltDeg: nearest }]),
    ...(pairs.length > 0 ? [{ code: 'pair' as const, pairs: pairs.slice(0, 3) }] : []),
    ...(smaller && does(problem, smaller) ? [{ code: 'smaller-cart-first' as const }] : []),
  ];
}

const clamped = (deg: number, { fromDeg, toDeg }: WorkingTilt): number => Math.min(toDeg ?? Infinity, Math.max(fromDeg ?? -Infinity, deg));

/** The same loads with the smallest on top; nothing where it is there already. */
function smallestFirst(plan: StagePlan): StagePlan | undefined {
  const sizes = plan.cartLoads.map((each) => ({ boxes: each.lastPosition - each.firstPosition + 1, baseKg: each.baseKg }));
  const least = sizes.reduce((best, each, index) => (each.boxes < sizes[best]!.boxes ? index : best), 0);
  if (least === 0) return undefined;
  const ordered = [sizes[least]!, ...sizes.filter((_, index) => index !== least)];
  let last = 0;
  const cartLoads = ordered.map(({ boxes, baseKg }) => {
    last += boxes;
    return { firstPosition: last - boxes + 1, lastPosition: last, baseKg };
  });
  return { ...plan, cartLoads };
}

/**
 * The level force of a tail line at the foot of the lowest box that brings a hang on one pick to a tilt (N, forward positive): moments about the hole. undefined
 * on two picks, whose tilt is given.
 */
export function tailLineN({ problem }: HangStage, tiltDeg: number): number | undefined {
  if (problem.picks.length !== 1) return undefined;
  const bodies = bodiesAt(problem, tiltDeg);
  const { behindMm, aboveMm } = problem.grid.holes.find((each) => each.hole === problem.picks[0]!.hole)!;
  const hole = place({ xMm: 0, zMm: 0 }, behindMm, aboveMm, radians(tiltDeg));
  const last = bodies.at(-1)!;
  const foot = place(last.pivot, 0, -(problem.boxes.at(-1)?.frontHeightMm ?? 0), last.theta);
  const { massKg, cg } = together(bodies);
  return (massKg * problem.gravityMps2 * (cg.xMm - hole.xMm)) / (hole.zMm - foot.zMm);
}
