import type { HangCase } from './hang-case.js';
import { restingTiltDeg } from './hang-geometry.js';
import type { HeldAside } from './hang-stage.js';
import { type PullBack, solvePullBack } from './pull-back.js';

export type LineName = 'line half taken up' | 'line taken up';

/** The line of a pull-back while it is taken up: of a hang on two picks half its tension, on one pick half of what it turns; nothing where it cannot hang so. */
export function lineStages(problem: HangCase, pull: PullBack): readonly { readonly name: LineName; readonly held: HeldAside }[] {
  return [
    { name: 'line half taken up' as const, pull: half(problem, pull) },
    { name: 'line taken up' as const, pull },
  ].flatMap(({ name, pull: own }) => {
    const solved = solvePullBack(problem, own);
    return solved.ok ? [{ name, held: { problem, pull: own, hang: solved.value } }] : [];
  });
}

function half(problem: HangCase, pull: PullBack): PullBack {
  if (problem.picks.length === 2) return { ...pull, tensionN: pull.tensionN === undefined ? undefined : pull.tensionN / 2 };
  const hole = problem.grid.holes.find((each) => each.hole === problem.picks[0]!.hole)!;
  return { ...pull, tiltDownDeg: pull.tiltDownDeg === undefined ? undefined : (pull.tiltDownDeg + restingTiltDeg(problem, hole)) / 2 };
}
