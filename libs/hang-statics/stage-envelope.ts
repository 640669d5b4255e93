import type { HangCase } from './hang-case.js';
import type { HangStage } from './hang-stage.js';

/** An extreme of one figure over all stages, and the stage in which it stands. */
export interface Extreme {
  readonly value: number;
  readonly stage: number;
}

export interface StageEnvelope {
  readonly picks: readonly {
    readonly hole: string;
    readonly mostN: Extreme;
    readonly leastN: Extreme;
    /** What the inclined chain pulls its point aside with, forward positive; the greatest by size, 0 where no moment inclines it. */
    readonly mostAsideN: Extreme;
  }[];
  readonly joints: readonly {
    readonly position: number;
    readonly mostLinkN: Extreme;
    readonly leastLinkN: Extreme;
    /** By size, whichever way it points. */
    readonly mostFrontPinN: Extreme;
    /** Negative where the front pins are pushed. */
    readonly leastFrontPinN: Extreme;
  }[];
}

/** The worst of all stages, figure by figure. */
export function envelopeOf(problem: HangCase, stages: readonly HangStage[]): StageEnvelope {
  return {
    picks: problem.picks.map((pick, index) => {
      const values = stages.map(({ answer }, stage) => ({ value: answer.picks[index]!.reactionN, stage }));
      // A chain that pulls the hang back pulls its point forward.
      const aside = stages.map(({ held }, stage) => ({ value: -(held?.hang.picks[index]!.horizontalN ?? 0) + 0, stage }));
      return { hole: pick.hole, mostN: most(values), leastN: least(values), mostAsideN: bySize(aside) };
    }),
    joints: problem.boxes.map((_, index) => {
      const joints = stages.flatMap(({ answer }, stage) => (answer.joints[index] ? [{ joint: answer.joints[index], stage }] : []));
      const links = joints.map(({ joint, stage }) => ({ value: joint.rearLinkN, stage }));
      const pins = joints.map(({ joint, stage }) => ({ value: joint.frontPinN, stage }));
      return {
        position: index + 1,
        mostLinkN: most(links),
        leastLinkN: least(links),
        mostFrontPinN: bySize(pins),
        leastFrontPinN: least(pins),
      };
    }),
  };
}

const bySize = (values: readonly Extreme[]): Extreme => values.reduce((a, b) => (Math.abs(b.value) >= Math.abs(a.value) ? b : a));
// Of equal values the later stage is named, so that trim stands where nothing before is worse.
const most = (values: readonly Extreme[]): Extreme => values.reduce((a, b) => (b.value >= a.value ? b : a));
const least = (values: readonly Extreme[]): Extreme => values.reduce((a, b) => (b.value <= a.value ? b : a));
