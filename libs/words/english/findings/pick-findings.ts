import type { FindingOf, HangSubject, JointSubject, LiftRemedy, PickSubject, PointSubject, RuleSubject } from '#trade';
import { type Table, type Words, tell } from '../../table/index.js';
import { belowPublished, boxes, cannotHang, comparisons, degrees, kilograms, list, number, percent, stages } from '../parts/index.js';
import { against } from './cart-findings.js';

type PickTable = Pick<
  Words['findings'],
  | 'rule-from-memory'
  | 'model-not-accepted'
  | 'rule-below-published'
  | 'rule-not-accepted'
  | 'over-rated-load'
  | 'no-rated-value'
  | 'no-rule'
  | 'cannot-hang-like-this'
  | 'cannot-lift-like-this'
  | 'beyond-working-tilt'
  | 'no-working-tilt'
  | 'reversed-link'
  | 'front-pins-pushed'
  | 'lock-pin-under-load'
  | 'point-at-two-places'
  | 'pull-back-reverses'
  | 'outside-tilt-range'
  | 'no-steel'
  | 'no-secondary'
  | 'measure'
  | 'system-limit'
  | 'system-not-approved'
  | 'no-wind-limit'
  | 'item-missing'
>;

const nose = (deg: number): string => `${degrees(Math.abs(deg))} nose ${deg < 0 ? 'up' : 'down'}`;

const remedies: Table<LiftRemedy> = {
  hole: ({ holes }) => `another hole (${list(holes)})`,
  pair: ({ pairs }) => `other holes (${pairs.map((each) => each.join(' and ')).join('; ')})`,
  'two-points': ({ holes }) => `two points, at ${holes.join(' and ')}`,
  'lift-tilt': ({ tiltDeg }) => `the grid ${nose(tiltDeg)} while it is lifted`,
  'smaller-cart-first': () => 'the smallest cart load first',
};
/** Those that were tried through every moment, or that none was found. */
const remedied = (found: readonly LiftRemedy[]): string =>
  found.length === 0
    ? 'Tried, and none does at every moment: other holes, two points, another tilt while lifting, the smallest cart first.'
    : `What does, tried at every moment: ${found.map((each) => tell(remedies, each)).join('; or ')}.`;

const place = (at: PickSubject | JointSubject | HangSubject | PointSubject): string =>
  at.kind === 'pick' ? `${at.name}, hole ${at.hole}` : at.kind === 'joint' ? `${at.name}, joint above box ${at.position}` : at.name;
const positions = (joints: readonly JointSubject[]): string => boxes(joints.map((each) => each.position));

function compared({
  subjects,
  compared: fact,
  onTheWayUp,
}: Extract<FindingOf<'over-rated-load' | 'no-rated-value' | 'no-rule'>, { readonly compared: unknown }>): string {
  const also = subjects.alsoAt.length > 0 ? ` Also above ${positions(subjects.alsoAt)}.` : '';
  return `${place(subjects.at)}${onTheWayUp ? ', on its way up' : ''}: ${tell(comparisons, fact)}${also}`;
}

/** What a field of a regime is called; of the whole rule its title. */
const fieldNames: Record<string, string> = {
  hoisting: 'class of hoisting',
  workingCoefficients: 'working coefficients',
  sideLoad: 'side load of shackles',
  legAngle: 'angle of bridle legs',
  hoistClasses: 'classes of hoists',
  useCases: 'use cases',
  secondarySuspension: 'secondary suspension',
  reserve: 'reserve of the picks',
  onePickSlack: 'one pick slack',
  reading: 'tolerance of load cells',
  wear: 'wear limits',
};
const ruleName = ({ field, title }: RuleSubject): string => (field === null ? title : (fieldNames[field] ?? field));

export const bareLines: Words['bareLines'] = {
  pick: ({ hole }) => `the pick at hole ${hole}`,
  bridle: ({ hole }) => `the bridle at hole ${hole}`,
  secondary: () => 'the secondary suspension',
  'pull-back': () => 'the pull-back',
};

export const pickFindings: PickTable = {
  'rule-from-memory': ({ subjects: { fields } }) => {
    const one = fields.length === 1;
    return `${one ? 'A rule' : 'Rules'} of the regime ${one ? 'was' : 'were'} written down from memory: ${list(fields.map(ruleName))}. Read ${one ? 'it' : 'them'} in the source before anybody relies on the figures.`;
  },
  'model-not-accepted': ({ subjects: { models } }) =>
    `${list(models.map((each) => each.id))} ${models.length === 1 ? 'waits' : 'wait'} for the safety officer: nothing is released on ${models.length === 1 ? 'its' : 'their'} figures before that.`,
  'rule-below-published': ({ below }) => below.map((each) => tell(belowPublished, each)).join(' '),
  'rule-not-accepted': ({ subjects: { rule } }) =>
    `The regime ${rule.title} waits for the safety officer: nothing is released on its figures before it is accepted.`,
  'over-rated-load': compared,
  'no-rated-value': (finding) => {
    if ('compared' in finding) return compared(finding);
    const { subjects } = finding;
    if ('joints' in subjects)
      return `${subjects.hang.name}: no rated value on file for the joints of ${positions(subjects.joints)}; their forces cannot be compared. Ask the maker.`;
    const { count } = finding.numbers as { count: number };
    return `What the structure may carry is not on file for ${count === 1 ? 'the point' : `${count} points:`} ${list(subjects.points.map((each) => each.name))}. Whoever answers for the structure confirms the point loads.`;
  },
  'no-rule': compared,
  'cannot-hang-like-this': ({ subjects: { at }, why }) =>
    why !== null
      ? `${at.kind === 'pick' ? `${place(at)}:` : `${at.name} with its pull-back:`} ${tell(cannotHang, why)}`
      : `${at.name} cannot hang like this: the pick${at.kind === 'pick' ? ` at hole ${at.hole}` : ''} would have to push, and a chain cannot push.`,
  'cannot-lift-like-this': ({ subjects: { pick }, numbers, stage, remedies }) =>
    `${pick.name} cannot be lifted like this: at ${tell(stages, stage)} the pick at hole ${pick.hole} would have to push with ${number(numbers.pushNewtons)} N. ${remedied(remedies)}`,
  'beyond-working-tilt': ({ subjects: { hang, system }, numbers: { tiltDeg, limitDeg, tailLineN }, stage, remedies }) =>
    `${hang.name}: at ${tell(stages, stage)} the grid stands ${nose(tiltDeg)}; the rigging system ${system.id} is worked up to ${nose(limitDeg)}. ${remedied(remedies)}${tailLineN === null ? '' : ` Held there by a tail line at the foot of the lowest box: ${number(Math.abs(tailLineN))} N level, ${tailLineN < 0 ? 'to the rear' : 'to the audience'}.`}`,
  'no-working-tilt': ({ subjects: { hang, system }, numbers: { tiltDeg }, stage }) =>
    `${hang.name} is lifted on one pick: at ${tell(stages, stage)} its grid stands ${nose(tiltDeg)}. How far the rigging system ${system.id} is worked from level is not on file; ask the maker.`,
  'reversed-link': ({ subjects: { hang, joints } }) =>
    `${hang.name}: the rear link above ${positions(joints)} is pushed instead of pulled. Ask the maker whether it may be.`,
  'front-pins-pushed': ({ subjects: { hang, joints }, numbers: { mostNewtons }, stage }) =>
    `${hang.name}: the front pins above ${positions(joints)} are pushed instead of pulled, with up to ${number(mostNewtons)} N each (${tell(stages, stage)}). Ask the maker whether they may be.`,
  'lock-pin-under-load': ({ subjects: { joint, alsoAt }, numbers: { mostNewtons }, stage }) =>
    `${joint.name}, joint above box ${joint.position}: coming down its lock pin is drawn in the air while ${number(mostNewtons)} N push the joint closed (as at ${tell(stages, stage)}).${alsoAt.length > 0 ? ` Also above ${positions(alsoAt)}.` : ''} Change the landing tilt or the holes until the pin is free, or draw it once the cart carries the load, where the maker’s manual says so.`,
  'point-at-two-places': ({ subjects: { point, picks }, numbers: { apartMm } }) =>
    `${list(picks.map(place))} name one point, ${point.name}, and hang ${number(apartMm)} mm apart. Give each its own point, or put them at one place.`,
  'pull-back-reverses': ({ subjects: { hang, joints } }) =>
    `${hang.name}: the pull-back turns the rear link above ${positions(joints)} from pull to push.`,
  'outside-tilt-range': ({ subjects: { hang }, numbers: { reserveShare, fromDeg, toDeg, wantedFromDeg, wantedToDeg } }) => {
    const wanted = wantedFromDeg === wantedToDeg ? degrees(wantedFromDeg) : `${degrees(wantedFromDeg)} to ${degrees(wantedToDeg)}`;
    return `${hang.name}: both picks keep ${percent(reserveShare)} of the weight from ${degrees(fromDeg)} to ${degrees(toDeg)} nose down; ${wanted} is wanted. Choose other holes.`;
  },
  'no-steel': ({ subjects: { hang }, lines }) =>
    `${hang.name}: no shackle and no sling is named for ${list(lines.map((each) => tell(bareLines, each)))}; nothing there is compared or counted.`,
  'no-secondary': ({ subjects: { hang } }) =>
    `${hang.name} has no secondary suspension, and the regime asks for one while persons can be below.`,
  measure: ({ subjects: { hang }, numbers: { points, massKg } }) =>
    `${hang.name} hangs on ${points} points in one line: what each carries depends on how its chain is set and cannot be computed. ${kilograms(massKg)} in all; measure every point with a load cell.`,
  'system-limit': ({ subjects: { hang }, numbers }) =>
    'boxes' in numbers
      ? `${hang.name} has ${numbers.boxes} boxes; the rigging system allows ${numbers.mostBoxes}.`
      : `${hang.name} weighs ${Math.round(numbers.massKg)} kg; the rigging system allows ${numbers.mostMassKg} kg.`,
  'system-not-approved': ({ subjects: { system } }) =>
    `The data of the rigging system ${system.id} is not approved: an example, not for use. The safety officer approves it against the maker’s manual.`,
  'no-wind-limit': ({ subjects: { hang } }) =>
    `${hang.name} hangs outdoors, and its rigging system has no wind limit on file. Ask the maker.`,
  'item-missing': ({ subjects: { at, model }, wanted }) =>
    wanted
      ? `${wanted.id} is wanted for ${at.kind === 'hang' ? at.name : place(at)} by its serial and may not be used: ${wanted.why ? tell(against, wanted.why) : 'it is not free'}.`
      : at.kind === 'hang'
        ? `No ${model.id} that may be used is left for ${at.name}.`
        : `No ${model.id} that is in date and free is left for ${place(at)}.`,
};
