import type { CannotHang, PickFinding, RoomFinding } from '#trade';
import type { Comparison, HangResult, PicksResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { clearanceFindings, roomFindings } from '../room/index.js';
import { belowPublished, ruleSubject, unseenRules } from '../rules/index.js';
import { comparedFindings, hangOf, overOnTheWayUp, overloadedJoints, pickOf } from './compared-findings.js';
import {
  jointFindings,
  lockPinFindings,
  pullBackFindings,
  pushFindings,
  pushedPinFindings,
  tiltFindings,
  workingTiltFindings,
} from './hang-findings.js';
import { bareLines, missingItems, systemFindings, systemLimits } from './rigging-findings.js';

/** What the plan has to say of its loads: what is over, what is missing, what nobody can compute. */
export function pickFindings(inputs: PlanInputs, picks: PicksResult): (PickFinding | RoomFinding)[] {
  return [
    ...regimeFindings(inputs),
    ...modelFindings(inputs),
    ...picks.hangs.flatMap((hang) => [...hangFindings(inputs, hang), ...roomFindings(hang)]),
    ...clearanceFindings(picks),
  ];
}

function regimeFindings({ loadRule }: PlanInputs): PickFinding[] {
  const fields = unseenRules(loadRule);
  const rule = ruleSubject(loadRule, null);
  const below = belowPublished(loadRule);
  return [
    ...(below.length === 0
      ? []
      : [
          {
            code: 'rule-below-published' as const,
            subjects: { rule, fields: below.map((each) => each.rule) },
            numbers: {},
            date: null,
            below: below.map((each) => each.fact),
          },
        ]),
    ...(loadRule.unaccepted ? [{ code: 'rule-not-accepted' as const, subjects: { rule }, numbers: {}, date: null }] : []),
    ...(fields.length > 0 ? [{ code: 'rule-from-memory' as const, subjects: { rule, fields }, numbers: {}, date: null }] : []),
  ];
}

/** Models of the hangs, and the pins of their boxes and grids, that wait for the safety officer. */
function modelFindings({ file: { catalogue }, hangs }: PlanInputs): PickFinding[] {
  const named = new Set(hangs.flatMap(({ id: _id, name: _name, ...hang }) => textsOf(hang)));
  for (const { model, pins } of [...catalogue.boxes, ...catalogue.grids]) if (named.has(model)) for (const { pin } of pins) named.add(pin);
  const waiting = Object.values(catalogue)
    .flat()
    .filter((each) => 'unaccepted' in each && each.unaccepted === true && named.has(each.model));
  if (waiting.length === 0) return [];
  const models = waiting.map((each) => ({ kind: 'model' as const, id: each.model }));
  return [{ code: 'model-not-accepted', subjects: { models }, numbers: {}, date: null }];
}

/** Every text in a design: whatever part of it names a model. */
const textsOf = (value: unknown): readonly string[] =>
  typeof value === 'string' ? [value] : value !== null && typeof value === 'object' ? Object.values(value).flatMap(textsOf) : [];

function hangFindings(inputs: PlanInputs, hang: HangResult): PickFinding[] {
  return [
    ...hang.picks.flatMap((pick) => onePick(inputs, hang, pick)),
    ...overloadedJoints(inputs, hang),
    ...jointFindings(hang),
    ...pushFindings(hang),
    ...workingTiltFindings(hang),
    ...pushedPinFindings(hang),
    ...lockPinFindings(hang),
    ...overOnTheWayUp(inputs, hang),
    ...tiltFindings(inputs, hang),
    ...pullBackFindings(inputs, hang),
    ...bareLines(inputs, hang),
    ...comparedFindings(inputs, hangOf(hang), hang.secondary),
    ...secondaryFindings(inputs, hang),
    ...(hang.unshared ? [measureFinding({ id: hang.hang }, hang.unshared.hoists.length, hang.massKg)] : []),
    ...systemLimits(inputs, hang),
    ...systemFindings(inputs, hang),
    ...missingItems(inputs, hang),
  ];
}

/** More than two points in one line: nobody can say what each carries. */
export const measureFinding = ({ id }: { readonly id: string }, points: number, massKg: number): PickFinding => ({
  code: 'measure',
  subjects: { hang: { kind: 'hang', id, name: id } },
  numbers: { points, massKg },
  date: null,
});

function onePick(inputs: PlanInputs, hang: HangResult, pick: HangResult['picks'][number]): PickFinding[] {
  const at = pickOf(hang, pick.hole);
  const cannot = (why: CannotHang | null): PickFinding => ({
    code: 'cannot-hang-like-this',
    subjects: { at },
    numbers: {},
    date: null,
    why,
  });
  return [
    ...(pick.reactionN < 0 ? [cannot(null)] : []),
    ...comparedFindings(
      inputs,
      at,
      pick.comparisons.filter((each) => !isShared(each)),
    ),
    ...comparedFindings(inputs, at, pick.alone?.comparisons ?? []),
    ...(pick.bridle?.fact ? [cannot(pick.bridle.fact)] : []),
  ];
}

/** The structure above a point that several picks share is told once, of the point. */
const isShared = ({ fact }: Comparison): boolean => fact?.part.code === 'structure' && fact.part.point !== undefined;

function secondaryFindings({ hangs, show, loadRule }: PlanInputs, hang: HangResult): PickFinding[] {
  const rule = loadRule.secondarySuspension;
  const has = hangs.find((each) => each.id === hang.hang)?.secondary !== undefined;
  if (!show.personsBelow || !rule?.whenPersonsBelow || has) return [];
  const subject = ruleSubject(loadRule, 'secondarySuspension.whenPersonsBelow');
  return [{ code: 'no-secondary', subjects: { hang: hangOf(hang), rule: subject }, numbers: {}, date: null }];
}
