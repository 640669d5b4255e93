import type { LiftMoment } from '#pack-plan';

/** What all moments of a lift take up together (mm of the side plane), so that nothing jumps from one to the next. */
export function extentOf(moments: readonly LiftMoment[]): {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
} {
  const points = moments.flatMap((each) => [...each.grid, ...each.boxes.flatMap((box) => box.corners), ...each.standing.flat()]);
  const [xs, zs] = [points.map((p) => p.xMm), points.map((p) => p.zMm)];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...zs), high: Math.max(...zs) };
}

/** Every force of a moment by its size. */
export const newtonsOf = ({ weightN, picks, joints, pull }: LiftMoment): readonly number[] => [
  weightN,
  ...picks.map((each) => Math.abs(each.alongN)),
  ...joints.flatMap((each) => [Math.abs(each.frontPinsN), Math.abs(each.rearLinkN)]),
  pull ? Math.hypot(pull.xN, pull.zN) : 0,
];

/** 1, 2 or 5 times a power of ten, not above half of the greatest force. */
export function roundScale(mostN: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(1, mostN / 2)));
  const digit = Math.floor(mostN / 2 / power);
  return power * (digit >= 5 ? 5 : digit >= 2 ? 2 : 1);
}
