import { groupDigits } from '#kernel';
import { type Comparison, type Finding, type HangResult, type PicksResult, type Weight, say } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { unseenRules } from '../rules/index.js';
import { systemMass } from './hang-limits.js';

/** What the plan has to say of its loads: what is over, what is missing, what nobody can compute. */
export function pickFindings(inputs: PlanInputs, picks: PicksResult): Finding[] {
  return [...regimeFindings(inputs, picks), ...picks.hangs.flatMap((hang) => hangFindings(inputs, hang)), ...structureFindings(picks)];
}

const about = (weight: Weight, code: string, subject: string, sentence: string, date: string | null = null): Finding =>
  say('picks', weight, code, subject, date, sentence);

function regimeFindings(inputs: PlanInputs, picks: PicksResult): Finding[] {
  const unseen = unseenRules(inputs.loadRule);
  if (unseen.length === 0) return [];
  return [
    about(
      'look',
      'rule-from-memory',
      picks.loadRule.title,
      `${unseen.length === 1 ? 'A rule' : 'Rules'} of the regime ${unseen.length === 1 ? 'was' : 'were'} written down from memory: ${unseen.join(', ')}. Read ${unseen.length === 1 ? 'it' : 'them'} in the source before anybody relies on the figures.`,
    ),
  ];
}

function hangFindings(inputs: PlanInputs, hang: HangResult): Finding[] {
  return [
    ...hang.picks.flatMap((pick) => pickOf(hang, pick)),
    ...overloadedJoints(hang),
    ...jointFindings(hang),
    ...stageFindings(hang),
    ...tiltFindings(hang),
    ...pullBackFindings(hang),
    ...noSteelFindings(inputs, hang.hang),
    ...compared(hang.hang, `${hang.hang}: `, hang.secondary),
    ...(inputs.show.personsBelow && inputs.loadRule.secondarySuspension?.whenPersonsBelow && !hasSecondary(inputs, hang)
      ? [
          about(
            'stop',
            'no-secondary',
            hang.hang,
            `${hang.hang} has no secondary suspension, and the regime asks for one while persons can be below.`,
          ),
        ]
      : []),
    ...(hang.unshared ? [about('look', 'measure', hang.hang, hang.unshared.sentence)] : []),
    ...systemMass(inputs, hang).map((sentence) => about('stop', 'system-limit', hang.hang, sentence)),
    ...systemFindings(inputs, hang),
    ...missingItems(inputs, hang),
  ];
}

const hasSecondary = (inputs: PlanInputs, hang: HangResult): boolean =>
  inputs.hangs.find((each) => each.id === hang.hang)?.secondary !== undefined;

/** Comparisons that fail or cannot be made, each in its sentence. */
function compared(subject: string, lead: string, comparisons: readonly Comparison[]): Finding[] {
  return comparisons.flatMap((each) => {
    const sentence = `${lead}${each.sentence}`;
    if (each.verdict === 'over') return [about('stop', 'over-rated-load', subject, sentence)];
    if (each.verdict === 'no rated value on file') return [about('look', 'no-rated-value', subject, sentence)];
    if (each.verdict === 'no rule on file') return [about('look', 'no-rule', subject, sentence)];
    return [];
  });
}

function pickOf(hang: HangResult, pick: HangResult['picks'][number]): Finding[] {
  const subject = `${hang.hang} hole ${pick.hole}`;
  return [
    ...(pick.reactionN < 0
      ? [
          about(
            'stop',
            'cannot-hang-like-this',
            subject,
            `${hang.hang} cannot hang like this: the pick at hole ${pick.hole} would have to push, and a chain cannot push.`,
          ),
        ]
      : []),
    ...compared(subject, `${hang.hang}, hole ${pick.hole}: `, pick.comparisons),
    ...(pick.bridle?.reason
      ? [about('stop', 'cannot-hang-like-this', subject, `${hang.hang}, hole ${pick.hole}: ${pick.bridle.reason}`)]
      : []),
  ];
}

function jointFindings(hang: HangResult): Finding[] {
  const where = (joint: HangResult['joints'][number]) => joint.position;
  const reversed = hang.joints.filter((joint) => joint.rearLinkN < 0).map(where);
  const silent = hang.joints.filter((joint) => joint.comparisons.some((one) => one.verdict === 'no rated value on file')).map(where);
  return [
    ...(reversed.length > 0
      ? [
          about(
            'look',
            'reversed-link',
            hang.hang,
            `${hang.hang}: the rear link above ${boxList(reversed)} is pushed instead of pulled. Ask the maker whether it may be.`,
          ),
        ]
      : []),
    ...(silent.length > 0
      ? [
          about(
            'look',
            'no-rated-value',
            hang.hang,
            `${hang.hang}: no rated value on file for the joints of ${boxList(silent)}; their forces cannot be compared. Ask the maker.`,
          ),
        ]
      : []),
  ];
}

/** While it is built: a chain that would have to push, parts that carry more than they are rated for although the finished hang does not. */
function stageFindings(hang: HangResult): Finding[] {
  if (!hang.envelope) return [];
  const pushes = hang.envelope.picks.filter((pick) => pick.leastN < 0 && hang.picks.every((each) => each.reactionN >= 0));
  const overAtTrim = hang.joints.some((joint) => joint.comparisons.some((each) => each.verdict === 'over'));
  return [
    ...pushes.map((pick) =>
      about(
        'stop',
        'cannot-lift-like-this',
        `${hang.hang} hole ${pick.hole}`,
        `${hang.hang} cannot be lifted like this: at ${pick.leastAt} the pick at hole ${pick.hole} would have to push with ${groupDigits(-pick.leastN)} N. Change the tilt while lifting, or the holes.`,
      ),
    ),
    ...hang.envelope.comparisons
      .filter((each) => each.verdict === 'over' && !(overAtTrim && each.unit === 'N'))
      .map((each) => about('stop', 'over-rated-load', hang.hang, `${hang.hang}, on its way up: ${each.sentence}`)),
  ];
}

function tiltFindings(hang: HangResult): Finding[] {
  const range = hang.tiltRange;
  if (!range || range.verdict === 'within' || hang.picks.some((pick) => pick.reactionN < 0)) return [];
  const degrees = (value: number) => `${groupDigits(value, 1)}°`;
  const wanted = range.needs ? `${degrees(range.needs.fromDeg)} to ${degrees(range.needs.toDeg)}` : degrees(hang.tiltDownDeg);
  return [
    about(
      'stop',
      'outside-tilt-range',
      hang.hang,
      `${hang.hang}: both picks keep ${Math.round(range.reserveShare * 100)} % of the weight from ${degrees(range.fromDeg)} to ${degrees(range.toDeg)} nose down; ${wanted} is wanted. Choose other holes.`,
    ),
  ];
}

/** Lines that are planned without a piece of steel on file: nothing is compared and nothing counted. */
function noSteelFindings(inputs: PlanInputs, id: string): Finding[] {
  const hang = inputs.hangs.find((each) => each.id === id)!;
  const bare = (steel: { readonly shackles: readonly string[]; readonly slings: readonly string[] } | undefined) =>
    steel !== undefined && steel.shackles.length + steel.slings.length === 0;
  const lines = [
    ...hang.picks.filter((pick) => bare(pick)).map((pick) => `the pick at hole ${pick.hole}`),
    ...hang.picks.filter((pick) => bare(pick.bridle)).map((pick) => `the bridle at hole ${pick.hole}`),
    ...(bare(hang.secondary) ? ['the secondary suspension'] : []),
    ...(bare(hang.pullBack) ? ['the pull-back'] : []),
  ];
  return lines.length === 0
    ? []
    : [
        about(
          'look',
          'no-steel',
          id,
          `${id}: no shackle and no sling is named for ${lines.join(', ')}; nothing there is compared or counted.`,
        ),
      ];
}

function pullBackFindings(hang: HangResult): Finding[] {
  const pull = hang.pullBack;
  if (!pull) return [];
  if (pull.reason) return [about('stop', 'cannot-hang-like-this', hang.hang, `${hang.hang} with its pull-back: ${pull.reason}`)];
  return [
    ...compared(hang.hang, `${hang.hang}: `, pull.comparisons),
    ...(pull.figures!.reversed.length > 0
      ? [
          about(
            'look',
            'pull-back-reverses',
            hang.hang,
            `${hang.hang}: the pull-back turns the rear link above ${boxList(pull.figures!.reversed)} from pull to push.`,
          ),
        ]
      : []),
  ];
}

function systemFindings(inputs: PlanInputs, hang: HangResult): Finding[] {
  return [
    ...(hang.systemApproved
      ? []
      : [
          about(
            'look',
            'system-not-approved',
            hang.system,
            `The data of the rigging system ${hang.system} is not approved: an example, not for use. The safety officer approves it against the maker’s manual.`,
          ),
        ]),
    ...(inputs.show.outdoor && hang.windLimitMps === null
      ? [
          about(
            'look',
            'no-wind-limit',
            hang.hang,
            `${hang.hang} hangs outdoors, and its rigging system has no wind limit on file. Ask the maker.`,
          ),
        ]
      : []),
  ];
}

function missingItems(inputs: PlanInputs, hang: HangResult): Finding[] {
  const hoists = hang.unshared?.hoists ?? hang.picks.map(({ hole, hoist, hoistSerial }) => ({ hole, hoist, serial: hoistSerial }));
  return [
    ...(hang.gridSerial === null
      ? [about('stop', 'item-missing', hang.hang, `No ${hang.grid} that may be used is left for ${hang.hang}.`, inputs.show.from)]
      : []),
    ...hoists
      .filter((each) => each.serial === null)
      .map(({ hole, hoist }) =>
        about(
          'stop',
          'item-missing',
          `${hang.hang} hole ${hole}`,
          `No ${hoist} that is in date and free is left for ${hang.hang}, hole ${hole}.`,
          inputs.show.from,
        ),
      ),
  ];
}

/** Points whose structure nobody has given a figure for: one sentence for all of them. */
function structureFindings(picks: PicksResult): Finding[] {
  const silent = picks.hangs.flatMap((hang) =>
    hang.picks.filter((pick) => !pick.comparisons.some((each) => each.what === 'structure above this point')).map((pick) => pick.point),
  );
  return silent.length === 0
    ? []
    : [
        about(
          'look',
          'no-rated-value',
          'structure',
          `What the structure may carry is not on file for ${silent.length === 1 ? 'the point' : `${silent.length} points:`} ${[...new Set(silent)].join(', ')}. Whoever answers for the structure confirms the point loads.`,
        ),
      ];
}

const boxList = (positions: readonly number[]): string =>
  positions.length === 1 ? `box ${positions[0]}` : `boxes ${positions.join(', ')}`;

/** One sentence for each kind of part that carries too much: the worst joint, and which others. */
function overloadedJoints(hang: HangResult): Finding[] {
  const over = hang.joints.flatMap((joint) =>
    joint.comparisons.filter((each) => each.verdict === 'over').map((each) => ({ position: joint.position, each })),
  );
  return [...new Set(over.map(({ each }) => each.what))].map((what) => {
    const all = over.filter(({ each }) => each.what === what);
    const worst = all.reduce((a, b) => (b.each.value > a.each.value ? b : a));
    const others = all.filter((one) => one !== worst).map((one) => one.position);
    return about(
      'stop',
      'over-rated-load',
      `${hang.hang} joint ${worst.position}`,
      `${hang.hang}, joint above box ${worst.position}: ${worst.each.sentence}${others.length > 0 ? ` Also above ${boxList(others)}.` : ''}`,
    );
  });
}
