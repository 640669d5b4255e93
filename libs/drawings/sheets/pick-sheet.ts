import { groupDigits, standardGravityMps2 } from '#kernel';
import type { Comparison, Factor, HangResult, PickResult, PicksHead } from '#pack-plan';
import { type Node, type Units, formatForce, formatLength, formatMass, formatNumber, node } from '../tree/index.js';
import { heightsOfPick, legLengths } from './height-table.js';
import { angle } from './hang-sheet.js';
import { jointContent } from './joint-table.js';
import { type SheetContext, caution, ruleNamed, sheet, signatures, table } from '../paper/index.js';

/** One pick on one page: every mass, the sum with its figures, what was compared with what. A rigger can do it again by hand. */
export function pickSheet(context: SheetContext, hang: HangResult, pick: PickResult, units: Units = 'metric'): Node {
  return sheet(
    { ...context, of: hang.hang },
    `${hang.name}, hole ${pick.hole}`,
    `${placeWords[pick.place]} · point ${pick.point} · hoist ${pick.hoistSerial ?? 'none found'}, ${pick.hoist}`,
    ...pickContent(context.plan.picks.loadRule, hang, pick, units),
    node(
      'p',
      {},
      'Load cell at hole ',
      pick.hole,
      ': ______________ kg, read  ☐ at the hook  ☐ above the hoist, by ______________ at ______________',
    ),
    caution(context.plan.picks.caution),
    signatures(),
  );
}

const placeWords = { front: 'front pick', rear: 'rear pick', only: 'the only pick' };

/** The working of a pick, for paper and for the screen. The sum is written in kilograms, millimetres and newtons, as it was computed. */
export function pickContent(loadRule: PicksHead['loadRule'], hang: HangResult, pick: PickResult, units: Units): Node[] {
  return [
    node('h2', {}, 'What hangs there'),
    massTables(hang),
    node('p', {}, sumSentence(hang)),
    node('h2', {}, 'The sum'),
    node('ol', {}, ...(pick.working.steps ?? []).map((step) => node('li', {}, step))),
    node('p', {}, `${pick.working.rule} Source: ${pick.working.source}. Load rule: ${ruleNamed(loadRule)} (${loadRule.status}).`),
    node('h2', {}, 'Compared'),
    comparisonTable(pick.comparisons, units),
    ...(pick.enough ? [node('p', {}, enoughSentence(pick.enough))] : []),
    ...bridleNodes(pick, units),
    ...legLengths(hang, pick.hole, units),
    node('h2', {}, 'Beside the hang at rest'),
    node('ul', {}, ...besideSentences(hang, pick, units).map((each) => node('li', {}, each)), ...heightsOfPick(hang, pick.hole, units)),
  ];
}

function massTables(hang: HangResult): Node {
  const rows = hang.masses.map((each) => [
    each.what,
    { right: formatNumber(each.massKg, 2) },
    { right: formatNumber(each.xMm, 1) },
    { right: formatNumber((each.massKg * each.xMm) / 1000, 2) },
  ]);
  const half = Math.ceil(rows.length / 2);
  const head = ['Part', { right: 'kg' }, { right: 'x, mm' }, { right: 'kg × m' }];
  return node('div', { class: 'twin' }, table(head, rows.slice(0, half)), ...(rows.length > 1 ? [table(head, rows.slice(half))] : []));
}

function sumSentence(hang: HangResult): string {
  if (hang.masses.length === 0) return 'This plan was made before its parts were listed one by one.';
  const massKg = hang.masses.reduce((sum, each) => sum + each.massKg, 0);
  const moment = hang.masses.reduce((sum, each) => sum + (each.massKg * each.xMm) / 1000, 0);
  return `x is the place of each centre forward of the grid’s front pivot, with the grid ${angle(hang.tiltDownDeg)}. Together ${formatNumber(massKg, 2)} kg and ${formatNumber(moment, 2)} kg × m: the centre of gravity stands at ${formatNumber(moment, 2)} / ${formatNumber(massKg, 2)} = ${formatNumber((moment / massKg) * 1000, 1)} mm.`;
}

/** What was compared with what, with how much left; the rated load in its own unit, the factors by letter with their rules below. */
function comparisonTable(comparisons: readonly Comparison[], units: Units): Node {
  const rules = [...new Set(comparisons.flatMap((each) => each.factors.map(ruleOf)))];
  const letter = (rule: string) => String.fromCharCode(97 + rules.indexOf(rule));
  return node(
    'div',
    { class: 'dense' },
    table(
      ['What', { right: 'Carries' }, { right: 'Rated' }, 'Times', { right: 'Allowed' }, { right: 'Left' }],
      comparisons.map((each) => {
        const amount = (value: number) => amountOf(value, each, units);
        return [
          each.limit === null ? node('span', { class: each.verdict === 'within' ? '' : 'stop' }, each.sentence) : each.what,
          { right: each.unit === '' ? '' : amount(each.value) },
          { right: each.rated ? `${groupDigits(each.rated.value, each.rated.value % 1 === 0 ? 0 : 2)} ${each.rated.unit}` : '' },
          node(
            'span',
            { class: 'line' },
            each.factors.map((factor) => `${Number(factor.factor.toFixed(4))} (${letter(ruleOf(factor))})`).join(' × '),
          ),
          { right: each.limit === null ? '' : amount(each.limit) },
          { right: each.limit === null ? '' : each.verdict === 'over' ? 'OVER' : `${Math.round((1 - each.value / each.limit) * 100)} %` },
        ];
      }),
    ),
    rules.length > 0 ? node('p', { class: 'quiet' }, rules.map((rule) => `(${letter(rule)}) ${rule}`).join('. '), '.') : null,
  );
}

const ruleOf = (factor: Factor): string => `${factor.what}: ${factor.source}${factor.status === 'found' ? '' : `; ${factor.status}`}`;

/** What is rated as a force is shown as one. */
function amountOf(value: number, { unit, rated }: Comparison, units: Units): string {
  if (unit === 'N') return formatForce(value, units);
  return rated?.unit === 'kN' ? formatForce(value * standardGravityMps2, units) : formatMass(value, units);
}

function enoughSentence(enough: NonNullable<PickResult['enough']>): string {
  const of = (what: string, model: string | null) => (model === null ? `no ${what} on file is enough` : `${what}: ${model}`);
  return `Smallest on file that is enough for this hook load: ${of('hoist', enough.hoist)}; ${of('shackle', enough.shackle)}; ${of('sling', enough.sling)}.`;
}

function bridleNodes(pick: PickResult, units: Units): Node[] {
  if (!pick.bridle) return [];
  if (pick.bridle.reason) return [node('h2', {}, 'Bridle'), node('p', { class: 'stop' }, pick.bridle.reason)];
  return [
    node('h2', {}, 'Bridle: its legs carry the point load'),
    table(
      [
        'Leg',
        { right: 'Length' },
        { right: 'From horizontal' },
        { right: 'Tension' },
        { right: 'Times factor' },
        { right: 'Pulls aside' },
        { right: 'Toward' },
      ],
      pick.bridle.legs.map((leg, index) => [
        String(index + 1),
        { right: formatLength(leg.lengthMm, units) },
        { right: `${formatNumber(leg.fromHorizontalDeg, 1)}°` },
        { right: formatForce(leg.tensionN, units) },
        { right: formatForce(leg.tensionDynamicN, units) },
        { right: formatForce(leg.horizontalN, units) },
        { right: `${formatNumber(leg.directionDeg)}°` },
      ]),
    ),
    node(
      'p',
      {},
      'Balance of the hook: the vertical parts of the legs add up to the point load, the horizontal parts to nothing. Toward: 0° to the audience, 90° along y of the stage plan.',
    ),
  ];
}

function besideSentences(hang: HangResult, pick: PickResult, units: Units): string[] {
  const own = hang.envelope?.picks.find((each) => each.hole === pick.hole);
  const range = hang.tiltRange;
  return [
    ...(pick.alone
      ? [
          `If the other pick goes slack this one carries the whole hang: ${formatMass(pick.alone.hookLoadKg, units)} at the hook, ${formatForce(pick.alone.pointLoadN, units)} at the point, and the grid comes to rest ${angle(pick.alone.tiltDownDeg)}.${aloneOver(pick)}`,
        ]
      : []),
    ...(pick.withoutLine
      ? [
          `Before the line is taken up, or if it lets go: ${formatMass(pick.withoutLine.hookLoadKg, units)} at the hook, ${formatForce(pick.withoutLine.pointLoadN, units)} at the point. What is compared above is the worse of the two.`,
        ]
      : []),
    ...(range
      ? [
          `Both picks keep ${Math.round(range.reserveShare * 100)} % of the weight between ${angle(range.fromDeg)} and ${angle(range.toDeg)}; the plan stands at ${angle(hang.tiltDownDeg)}${range.needs ? ` and the aim may ask for ${angle(range.needs.fromDeg)} to ${angle(range.needs.toDeg)}` : ''}.`,
        ]
      : []),
    ...(hang.slackAtDeg
      ? [`The rear pick is slack at ${angle(hang.slackAtDeg.rearSlack)}, the front pick at ${angle(hang.slackAtDeg.frontSlack)}.`]
      : []),
    ...(own
      ? [
          `On the way up it carries most, ${formatForce(own.mostN, units)}, ${stageWords(own.mostAt)}, and least, ${formatForce(own.leastN, units)}, ${stageWords(own.leastAt)}.`,
        ]
      : []),
    ...(hang.holeTilts.length > 1
      ? [`One pick: the hole makes the tilt. ${hang.holeTilts.map((each) => `${each.hole}: ${angle(each.tiltDownDeg)}`).join('; ')}.`]
      : []),
    ...(hang.pullBack?.figures
      ? [
          `The pull-back pulls its anchor with ${formatForce(hang.pullBack.figures.tensionN, units)}; the chains incline by ${formatNumber(Math.abs(hang.pullBack.figures.chainsInclineDeg), 2)}° and the hang stands ${formatLength(Math.abs(hang.pullBack.figures.drawnAsideMm), units)} aside. Slack tilts without the line do not apply.`,
        ]
      : []),
  ];
}

/** What the whole hang on one pick would exceed. */
function aloneOver(pick: PickResult): string {
  const asked = pick.alone?.comparisons ?? [];
  if (asked.length > 0) return ` The regime asks for it: ${asked.map((each) => each.sentence).join(' ')}`;
  const over = pick.comparisons.filter(
    (each) =>
      each.unit === 'kg' &&
      each.limit !== null &&
      each.fact?.part.code !== 'structure' &&
      each.fact?.part.code !== 'leg-anchor' &&
      pick.alone!.hookLoadKg > each.limit,
  );
  return over.length === 0 ? '' : ` That is more than is allowed of ${over.map((each) => each.what).join(', ')}.`;
}

const stageWords = (stage: string): string => (stage === 'at trim' ? stage : `at ${stage}`);

/** Every moment of building one hang with the worst of each figure. */
export function stageSheet(context: SheetContext, hang: HangResult, units: Units = 'metric'): Node {
  return sheet(
    { ...context, of: hang.hang },
    `${hang.name}, stage by stage`,
    'The worst moment is often not the last',
    ...stageContent(hang, units),
    node('h2', {}, 'Joints at trim'),
    ...jointContent(hang, units),
    caution(context.plan.picks.caution),
    signatures(),
  );
}

export function stageContent(hang: HangResult, units: Units): Node[] {
  const holes = hang.envelope?.picks.map((each) => each.hole) ?? [];
  return [
    node(
      'div',
      { class: 'dense' },
      table(
        [
          'Stage',
          { right: 'Tilt' },
          { right: 'Mass' },
          ...holes.map((hole) => ({ right: `Hole ${hole}` })),
          { right: 'Most in a rear link' },
          { right: 'Most on a front pin' },
        ],
        hang.stages.map((stage) => [
          stage.name,
          { right: `${formatNumber(stage.tiltDownDeg, 1)}°` },
          { right: formatMass(stage.massKg, units) },
          ...stage.picks.map((pick) => ({ right: formatForce(pick.reactionN, units) })),
          { right: `${formatForce(stage.mostLink.newtons, units)}, box ${stage.mostLink.position}` },
          { right: `${formatForce(stage.mostFrontPin.newtons, units)}, box ${stage.mostFrontPin.position}` },
        ]),
      ),
    ),
    node(
      'p',
      {},
      'Front pins only: the cart load hangs on its front pins with the base on, turned until its centre of gravity is under the joint. Linked and closed: the rear link is in. Opened and locked: at its splays, the base still on. Coming down, rear link drawn: if it is drawn while the load hangs, at the lowest point of the swing, where it pulls with more than it weighs. Positive in a rear link: pulled; negative: pushed. Stages of lifting: common practice, no published source.',
    ),
    node('h2', {}, 'The worst of all stages, compared'),
    comparisonTable(hang.envelope?.comparisons ?? [], units),
  ];
}
