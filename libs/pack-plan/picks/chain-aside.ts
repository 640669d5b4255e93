import type { HangAnswer } from '#hang-statics';
import type { Hang } from '#tour-file';
import type { EnvelopeResult, PickResult } from '../contract/index.js';
import type { Pulled } from './plan-pull-back.js';

type Moment = NonNullable<EnvelopeResult['picks'][number]['aside']>;

/** Less than this is the rounding of the sum. */
const leastAsideN = 0.01;

/** What the chain of a pick pulls its point aside with: at rest by its pull-back, and the most at any moment of lifting. */
export function chainAside(
  hang: Hang,
  answer: HangAnswer & Pulled,
  reactionN: number,
  most: Moment | undefined,
): Pick<PickResult, 'asideN' | 'asideDeg' | 'mostAside'> {
  const inclineDeg = answer.chainsInclineDeg ?? 0;
  const asideN = Math.abs(reactionN) * Math.sin((Math.abs(inclineDeg) * Math.PI) / 180);
  const atRest = { asideN, asideDeg: asideN > 0 ? towardDeg(hang, inclineDeg > 0) : null };
  if (!most || Math.abs(most.newtons) <= leastAsideN) return atRest;
  return {
    ...atRest,
    mostAside: {
      newtons: Math.abs(most.newtons),
      directionDeg: towardDeg(hang, most.newtons > 0),
      inclineDeg: most.inclineDeg,
      at: most.at,
    },
  };
}

/** Toward which a point is pulled on the stage plan, between -180 and 180. */
const towardDeg = ({ stage }: Hang, isForward: boolean): number => (((isForward ? 0 : 180) + (stage?.azimuthDeg ?? 0) + 540) % 360) - 180;
