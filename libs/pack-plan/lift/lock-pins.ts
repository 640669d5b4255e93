import type { HangStage } from '#hang-statics';
import type { RiggingSystem } from '#tour-file';

/** A lock pin that is drawn in the air while it holds its joint: the body below the joint, counted from 1, and what pushes the joint closed (N). */
export interface LoadedLockPin {
  readonly stage: HangStage;
  readonly place: number;
  readonly newtons: number;
}

/** Less than this is the rounding of the sum. */
const leastPushN = 0.01;

/**
 * Coming down, where the system draws the lock pins of a cart load before the cart carries it: those that are not free then. A joint hangs open against the end
 * of its link while that is pulled; what pushes the link is held by the lock pin, but for a joint at its closed angle, whose faces touch (common practice, no
 * published source). `splayOf`: of the joint above a body.
 */
export function loadedLockPins(
  stages: readonly HangStage[],
  system: Pick<RiggingSystem, 'comingDown' | 'closedSplayDeg'> | undefined,
  splayOf: (place: number) => number,
): readonly LoadedLockPin[] {
  const last = Math.max(0, ...stages.map((each) => each.cartLoad ?? 0));
  const isDrawn = (load: number): boolean =>
    (system?.comingDown ?? []).some(
      (step) =>
        typeof step !== 'string' &&
        step.moments?.includes('lock pins drawn') === true &&
        (step.at === 'each cart' || step.at === (load === last ? 'first cart' : 'further carts')),
    );
  const closed = system?.closedSplayDeg ?? 0;
  return stages
    .filter((each) => each.name === 'opened and locked' && each.cartLoad !== null && isDrawn(each.cartLoad))
    .flatMap((stage) => {
      const above = stages.findLast((each) => each.cartLoad === (stage.cartLoad ?? 0) - 1)?.answer.joints.length ?? 0;
      return stage.answer.joints.flatMap(({ rearLinkN }, index) =>
        index >= above && rearLinkN < -leastPushN && Math.abs(splayOf(index + 1) - closed) > 1e-9
          ? [{ stage, place: index + 1, newtons: -rearLinkN }]
          : [],
      );
    });
}
