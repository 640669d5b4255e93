import { type HangCase, solveHang } from '#hang-statics';
import { canonicalJson } from '#kernel';
import type { Hang } from '#tour-file';
import type { Comparison } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { compareJoint, onePickSlackFactor, toldAt } from '../rules/index.js';

/**
 * Joints of a hang that has turned until it hangs from one of its two picks, the other slack: of each model and part the joint that carries most, where
 * the regime asks for it. Frames between boxes have no rated values.
 */
export function jointsAlone(
  inputs: PlanInputs,
  hang: Hang,
  { problem, bodies }: { readonly problem: HangCase; readonly bodies: readonly { readonly position: number; readonly frame: unknown }[] },
  index: number,
): readonly Comparison[] {
  const factor = onePickSlackFactor(inputs.loadRule, inputs.words);
  const pick = problem.picks[index];
  if (factor === null || !pick) return [];
  const { tiltDownDeg: _given, ...free } = problem;
  const all = solveHang({ ...free, picks: [pick] }).joints.flatMap((joint, place) => {
    const { position, frame } = bodies[place]!;
    if (frame) return [];
    const box = modelOf(inputs.file.catalogue.boxes, hang.boxes[position - 1]!.model);
    return compareJoint(inputs, box, joint, [factor]).map((each) => ({ each, position }));
  });
  const keyOf = ({ fact }: Comparison) => canonicalJson(fact?.part ?? null);
  return [...new Set(all.map(({ each }) => keyOf(each)))].map((key) => {
    const worst = all.filter(({ each }) => keyOf(each) === key).reduce((a, b) => (b.each.value > a.each.value ? b : a));
    return toldAt(inputs, worst.each, { position: worst.position, stage: { code: 'other-slack' } });
  });
}
