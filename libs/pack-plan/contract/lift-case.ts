import type { HangCase, PullBack, StagePlan } from '#hang-statics';

/** What the lift of a hang is computed from: with it every moment can be solved and drawn again wherever the plan is read. */
export interface LiftCase {
  readonly problem: HangCase;
  readonly plan: StagePlan;
  /** In plans made before it stood in `plan`: the line of a pull-back, which is taken up at trim. */
  readonly pull?: PullBack;
  /** Cart loads in the order of the plan, as people call them. */
  readonly loads: readonly string[];
  /** Bodies below the grid from the top: boxes, and the frames that join them. */
  readonly bodies: readonly {
    readonly position: number;
    readonly isFrame: boolean;
    readonly frontHeightMm: number;
    readonly rearHeightMm: number;
    readonly depthMm: number;
  }[];
  readonly grid: { readonly lengthMm: number; readonly heightMm: number };
}
