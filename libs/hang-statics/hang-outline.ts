import type { HangCase } from './hang-case.js';
import { type Point, bodiesAt, degrees, place } from './hang-geometry.js';

/** What a drawing of a hang needs: screen and paper draw exactly these points (mm, world of the case). */
export interface HangOutline {
  readonly grid: readonly Point[];
  readonly holes: readonly { readonly hole: string; readonly at: Point }[];
  readonly boxes: readonly {
    readonly position: number;
    readonly corners: readonly Point[];
    readonly frontPivot: Point;
    readonly tiltDownDeg: number;
  }[];
}

/** Boxes are trapezoids: the full height at the front, the rear height centred on it, so that the rears come together with splay. */
export function hangOutline(
  problem: HangCase,
  tiltDownDeg: number,
  sizes: readonly { readonly frontHeightMm: number; readonly rearHeightMm: number; readonly depthMm: number }[],
  gridSize: { readonly lengthMm: number; readonly heightMm: number },
): HangOutline {
  const bodies = bodiesAt(problem, tiltDownDeg);
  const grid = bodies[0]!;
  const front = Math.min(0, ...problem.grid.holes.map((hole) => hole.behindMm)) - 30;
  const rear = Math.max(front + gridSize.lengthMm, ...problem.grid.holes.map((hole) => hole.behindMm + 30));
  return {
    grid: [
      place(grid.pivot, front, gridSize.heightMm, grid.theta),
      place(grid.pivot, rear, gridSize.heightMm, grid.theta),
      place(grid.pivot, rear, 20, grid.theta),
      place(grid.pivot, front, 20, grid.theta),
    ],
    holes: problem.grid.holes.map((hole) => ({ hole: hole.hole, at: place(grid.pivot, hole.behindMm, hole.aboveMm, grid.theta) })),
    boxes: sizes.map((size, index) => {
      const body = bodies[index + 1]!;
      const taper = (size.frontHeightMm - size.rearHeightMm) / 2;
      return {
        position: index + 1,
        frontPivot: body.pivot,
        tiltDownDeg: degrees(body.theta),
        corners: [
          body.pivot,
          place(body.pivot, 0, -size.frontHeightMm, body.theta),
          place(body.pivot, size.depthMm, -size.frontHeightMm + taper, body.theta),
          place(body.pivot, size.depthMm, -taper, body.theta),
        ],
      };
    }),
  };
}
