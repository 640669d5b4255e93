import type { HangStage } from '#hang-statics';
import type { StepFact } from '../contract/index.js';

/** The moment of a step in the lift of one cart load, counted from 0, or at trim where `load` is null; nothing where the lift has no such moment. */
export function stepFact(
  stages: readonly HangStage[],
  positionOf: (place: number) => number,
  load: number | null,
  moment: string,
): StepFact[] {
  if (moment === 'rear link drawn') return load === null ? [] : linkDrawn(stages, positionOf, load);
  // Lock pins are drawn before a load comes down onto its cart: it hangs then as it hung when they were fitted.
  const name = moment === 'lock pins drawn' ? 'opened and locked' : moment;
  const stage = stages.findLast((each) => each.name === name && (load === null || moment === 'at trim' || each.cartLoad === load + 1));
  return stage ? [{ ...read(stage, moment), kick: null }] : [];
}

function read({ answer, problem, swung }: HangStage, moment: string): Omit<StepFact, 'kick'> {
  return {
    moment,
    tiltDownDeg: answer.tiltDownDeg,
    cells: answer.picks.map(({ hole, reactionN }, index) => ({
      hole,
      hookLoadKg: reactionN / problem.gravityMps2 + problem.picks[index]!.belowHookKg,
    })),
    held: swung ? { newtons: Math.abs(swung.forceN), turnedDeg: Math.abs(swung.turnedDeg) } : null,
  };
}

/** Coming down: the link of the joint above a load carries at most what it carried while that load hung closed; drawn, the load above hangs alone. */
function linkDrawn(stages: readonly HangStage[], positionOf: (place: number) => number, load: number): StepFact[] {
  const own = stages.filter((each) => each.cartLoad === load + 1);
  const closed = own.find((each) => each.name === 'linked and closed');
  const first = own.find((each) => each.name === 'driven down')?.problem.boxes.length ?? 0;
  const joint = closed?.answer.joints[first];
  if (!closed || !joint) return [];
  const newtonMetres = (joint.rearLinkN * closed.problem.boxes[first]!.rearLeverMm) / 1000;
  const after = own.find((each) => each.name === 'driven down') ?? closed;
  const drawn = own.find((each) => each.kick !== null);
  const pins = drawn?.answer.joints[first];
  const swing = drawn?.kick && pins ? { swing: { turnsDeg: drawn.kick.turnsDeg, pinsN: 2 * pins.frontPinN } } : {};
  return [{ ...read(after, 'rear link drawn'), kick: { position: positionOf(first + 1), linkN: joint.rearLinkN, newtonMetres, ...swing } }];
}
