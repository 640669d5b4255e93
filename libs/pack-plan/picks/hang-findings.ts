import type { PickFinding } from '#trade';
import type { HangResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { ruleSubject } from '../rules/index.js';
import { comparedFindings, hangOf, jointOf, pickOf } from './compared-findings.js';

/** Links that are pushed instead of pulled, and joints that nobody has rated. */
export function jointFindings(hang: HangResult): PickFinding[] {
  const reversed = hang.joints.filter((joint) => joint.rearLinkN < 0);
  const silent = hang.joints.filter((joint) => joint.comparisons.some((one) => one.verdict === 'no rated value on file'));
  const joints = (all: HangResult['joints']) => all.map((joint) => jointOf(hang, joint.position));
  const at = hangOf(hang);
  return [
    ...(reversed.length > 0
      ? [{ code: 'reversed-link' as const, subjects: { hang: at, joints: joints(reversed) }, numbers: {}, date: null }]
      : []),
    ...(silent.length > 0
      ? [{ code: 'no-rated-value' as const, subjects: { hang: at, joints: joints(silent) }, numbers: {}, date: null }]
      : []),
  ];
}

/** A chain that would have to push while the hang is built, although it does not when it hangs. */
export const pushFindings = (hang: HangResult): PickFinding[] =>
  (hang.envelope?.picks ?? [])
    .filter((pick) => pick.leastN < 0 && hang.picks.every((each) => each.reactionN >= 0))
    .map((pick) => ({
      code: 'cannot-lift-like-this',
      subjects: { pick: pickOf(hang, pick.hole) },
      numbers: { pushNewtons: -pick.leastN },
      date: null,
      stage: pick.fact!.least,
      remedies: hang.envelope?.remedies ?? [],
    }));

/** A grid that stands beyond the working tilt of its system while it is lifted; on one pick also where the system says none. */
export function workingTiltFindings(hang: HangResult): PickFinding[] {
  const tilted = hang.envelope?.tilted;
  if (!tilted) return [];
  const { tiltDeg, limitDeg, tailLineN, at: stage } = tilted;
  const subjects = { hang: hangOf(hang), system: { kind: 'system' as const, id: hang.system } };
  if (limitDeg === null) return [{ code: 'no-working-tilt', subjects, numbers: { tiltDeg }, date: null, stage }];
  const remedies = hang.envelope?.remedies ?? [];
  return [{ code: 'beyond-working-tilt', subjects, numbers: { tiltDeg, limitDeg, tailLineN }, date: null, stage, remedies }];
}

/** Front pins that are pushed, at the moment when they are pushed most; links that are pushed are told of the hang at rest. */
export function pushedPinFindings(hang: HangResult): PickFinding[] {
  const pushed = hang.envelope?.pushed ?? [];
  if (pushed.length === 0) return [];
  const worst = pushed.reduce((a, b) => (b.leastFrontPinN < a.leastFrontPinN ? b : a));
  return [
    {
      code: 'front-pins-pushed',
      subjects: { hang: hangOf(hang), joints: pushed.map((each) => jointOf(hang, each.position)) },
      numbers: { mostNewtons: -worst.leastFrontPinN },
      date: null,
      stage: worst.at,
    },
  ];
}

/** Lock pins drawn in the air that hold their joint then: the one that holds most, and the others. */
export function lockPinFindings(hang: HangResult): PickFinding[] {
  const pins = hang.envelope?.lockPins ?? [];
  if (pins.length === 0) return [];
  const worst = pins.reduce((a, b) => (b.newtons > a.newtons ? b : a));
  const others = [...new Set(pins.map((each) => each.position))].filter((each) => each !== worst.position);
  return [
    {
      code: 'lock-pin-under-load',
      subjects: { joint: jointOf(hang, worst.position), alsoAt: others.map((each) => jointOf(hang, each)) },
      numbers: { mostNewtons: worst.newtons },
      date: null,
      stage: worst.at,
    },
  ];
}

export function tiltFindings({ loadRule }: PlanInputs, hang: HangResult): PickFinding[] {
  const range = hang.tiltRange;
  if (!range || range.verdict === 'within' || hang.picks.some((pick) => pick.reactionN < 0)) return [];
  return [
    {
      code: 'outside-tilt-range',
      subjects: { hang: hangOf(hang), rule: loadRule.reserve ? ruleSubject(loadRule, 'reserve.share') : null },
      numbers: {
        reserveShare: range.reserveShare,
        fromDeg: range.fromDeg,
        toDeg: range.toDeg,
        wantedFromDeg: range.needs?.fromDeg ?? hang.tiltDownDeg,
        wantedToDeg: range.needs?.toDeg ?? hang.tiltDownDeg,
      },
      date: null,
    },
  ];
}

export function pullBackFindings(inputs: PlanInputs, hang: HangResult): PickFinding[] {
  const pull = hang.pullBack;
  if (!pull) return [];
  const at = hangOf(hang);
  if (pull.fact) return [{ code: 'cannot-hang-like-this', subjects: { at }, numbers: {}, date: null, why: pull.fact }];
  const reversed = pull.figures!.reversed.map((position) => jointOf(hang, position));
  return [
    ...comparedFindings(inputs, at, pull.comparisons),
    ...(reversed.length > 0
      ? [{ code: 'pull-back-reverses' as const, subjects: { hang: at, joints: reversed }, numbers: {}, date: null }]
      : []),
  ];
}
