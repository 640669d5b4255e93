import type { HangResult, PackPlan, PickResult } from '#pack-plan';
import { type Node, type Units, formatForce, formatMass, node } from '../tree/index.js';
import { type SheetContext, caution, mono, sheet, table, tickBox } from '../paper/index.js';
import { riggingCaution } from '../sheets/index.js';
import { controlOnTheGround, inTheAir, lotsInTheAir } from './in-the-air.js';

/** Something that must not fly, as the gate says. */
export interface BarredAloft {
  readonly item: string;
  /** Why, as a sentence. */
  readonly sentence: string;
}

/** Of a hang with something barred: what shares its load path, what each point carries, and what comes down with it, lowest first. */
export function hangsWithSheet(
  context: SheetContext,
  hang: HangResult,
  barred: readonly BarredAloft[],
  isFlying: boolean,
  units: Units = 'metric',
): Node {
  const { plan } = context;
  const wrong = new Set(barred.map((each) => each.item));
  return sheet(
    { ...context, of: hang.hang },
    `What hangs with it: ${hang.name}`,
    isFlying ? 'In the air, by what is ticked' : 'Not in the air, by what is ticked',
    node('ul', { class: 'findings' }, ...barred.map((each) => node('li', { class: 'stop' }, node('b', {}, '■ Stop. '), each.sentence))),
    node('p', {}, ...barred.flatMap((each) => [`${each.item}: ${pathWords(plan, hang, each.item, units)}`, node('br')])),
    node('h2', {}, 'What each point carries'),
    shares(plan, hang, wrong, units),
    node('h2', {}, 'The load path, from the point down'),
    path(plan, hang, wrong, units),
    node('h2', {}, 'What comes down with it, in this order'),
    comingDown(plan, hang, wrong, units),
    node('p', {}, downWords(hang)),
    caution(riggingCaution),
    caution(plan.picks.caution),
  );
}

/** Where none of the hangs asked for has anything barred: says so, of which hangs and as of when. `saidAt`: when the house said it, in words. */
export function nothingBarredSheet(context: SheetContext, hangs: readonly HangResult[], flying: ReadonlySet<string>, saidAt: string): Node {
  const [only] = hangs;
  const rows = hangs.map((each) => [
    each.name,
    flying.has(each.hang) ? 'In the air, by what is ticked' : 'Not in the air, by what is ticked',
    `${each.boxes.length} boxes`,
  ]);
  return sheet(
    hangs.length === 1 && only ? { ...context, of: only.hang } : context,
    hangs.length === 1 && only ? `What hangs with it: ${only.name}` : 'What hangs with it',
    `${context.plan.tour.name} · as the house said at ${saidAt}`,
    node('p', {}, node('b', {}, 'Nothing of these hangs is barred'), `, as the house said at ${saidAt}.`),
    table(['Hang', 'Where', 'What'], rows),
    node('p', {}, 'What is not on file, and what happened since, is not in this: whoever sees a fault on the rig says so and it stops.'),
    caution(riggingCaution),
    caution(context.plan.picks.caution),
  );
}

const hoistsOf = (hang: HangResult): readonly { readonly hole: string; readonly serial: string | null }[] =>
  hang.unshared?.hoists ?? hang.picks.map((each) => ({ hole: each.hole, serial: each.hoistSerial }));

/** Where in the path of the load a barred thing is, and what depends on it. */
function pathWords(plan: PackPlan, hang: HangResult, item: string, units: Units): string {
  const whole = `${formatMass(hang.massKg, units)} hang from it`;
  if (item === hang.gridSerial) return `the grid. The whole hang, ${whole}.`;
  const box = hang.boxes.find((each) => each.serial === item);
  if (box) {
    const below = hang.boxes.filter((each) => each.position > box.position);
    return `box ${box.position} from the top. ${
      below.length === 0
        ? 'Nothing hangs below it.'
        : `It carries ${below.length === 1 ? 'the box' : `the ${below.length} boxes`} below it, ${formatMass(box.hangsBelowKg, units)}.`
    } Grid, hoists and the boxes above carry it.`;
  }
  const hoist = hoistsOf(hang).find((each) => each.serial === item);
  const pick = hang.picks.find((each) => each.hole === hoist?.hole);
  if (pick) return pickWords(hang, pick, units);
  if (hoist) return `the hoist of hole ${hoist.hole}. More than two points in one line: no share is computed; take it that it carries all.`;
  const lot = lotsInTheAir(plan).find((each) => each.item === item);
  if (lot) return `a lot, ${lot.where}. Which pieces of it are in this hang is not on file: take it that any may be.`;
  const control = controlOnTheGround(plan).find((each) => each.item === item);
  if (control) return `on the ground, ${control.where}. Nothing hangs from it; no hoist is moved with it.`;
  const chosen = inTheAir(plan)
    .find((each) => each.hang.hang === hang.hang)
    ?.items.find((each) => each.item === item);
  return chosen
    ? `${chosen.where}. Take it that the whole hang, ${whole}.`
    : 'its place in the hang is not on file: take it that all hangs from it.';
}

function pickWords(hang: HangResult, pick: PickResult, units: Units): string {
  const other = hang.picks.find((each) => each !== pick);
  const own = `the hoist of hole ${pick.hole}, point ${pick.point}. ${formatMass(pick.hookLoadKg, units)} at its hook.`;
  if (!other) return `${own} It is the only one: everything hangs from it.`;
  return other.alone
    ? `${own} Were it to let go, hole ${other.hole} would carry ${formatMass(other.alone.hookLoadKg, units)} at rest, and the fall into it more, and the hang would tilt to ${other.alone.tiltDownDeg.toFixed(1)}° down.`
    : `${own} What hole ${other.hole} would carry alone is not computed.`;
}

function shares(plan: PackPlan, hang: HangResult, wrong: ReadonlySet<string>, units: Units): Node {
  if (hang.unshared)
    return node(
      'p',
      { class: 'stop' },
      `${hang.unshared.sentence} In all ${formatForce(hang.unshared.totalN, units)}; no share of a point is computed.`,
    );
  const sum = hang.picks.reduce((total, each) => total + each.reactionN, 0);
  return table(
    [
      'Point',
      'Hoist',
      { right: 'Share' },
      { right: 'At the hook' },
      { right: 'On the point' },
      { right: 'At worst, with dynamics' },
      'When the other lets go',
    ],
    hang.picks.map((pick) => [
      `${pick.point}, hole ${pick.hole}${sharedWith(plan, hang, pick)}`,
      marked(pick.hoistSerial ?? 'none on file', wrong),
      { right: sum > 0 ? `${Math.round((100 * pick.reactionN) / sum)} %` : '–' },
      { right: formatMass(pick.hookLoadKg, units) },
      { right: formatForce(pick.pointLoadN, units) },
      { right: formatForce((pick.worst ?? pick).pointLoadDynamicN, units) },
      pick.alone ? `${formatMass(pick.alone.hookLoadKg, units)} at the hook` : '–',
    ]),
  );
}

/** Other hangs on the same point, and others on the same beam. */
function sharedWith({ picks }: PackPlan, hang: HangResult, pick: PickResult): string {
  const others = picks.hangs
    .filter((each) => each.hang !== hang.hang)
    .flatMap((each) => each.picks.map((one) => ({ one, words: `${each.name}, hole ${one.hole}` })));
  const onPoint = others.filter(({ one }) => one.point === pick.point);
  const onBeam = others.filter(({ one }) => one.point !== pick.point && one.beam !== undefined && one.beam === pick.beam);
  const said = (what: string, all: typeof others) => (all.length === 0 ? '' : `; ${what} as ${all.map((each) => each.words).join('; ')}`);
  return `${said('the same point', onPoint)}${said(`the same beam (${pick.beam ?? ''})`, onBeam)}`;
}

const marked = (serial: string, wrong: ReadonlySet<string>): Node =>
  node('span', { class: 'line' }, wrong.has(serial) ? node('b', {}, '■ ', mono(serial)) : mono(serial));

function path(plan: PackPlan, hang: HangResult, wrong: ReadonlySet<string>, units: Units): Node {
  const items = inTheAir(plan).find((each) => each.hang.hang === hang.hang)?.items ?? [];
  const boxes = new Map(hang.boxes.map((each) => [each.serial, each]));
  const rows = items.map(({ item, where }) => {
    const box = boxes.get(item);
    return [marked(item, wrong), where, box ? `${formatMass(box.hangsBelowKg, units)} below it` : ''];
  });
  const lots = lotsInTheAir(plan).map(({ item, where }) => [marked(item, wrong), where, 'of all hangs together']);
  return node('div', { class: 'tight' }, table(['Serial or lot', 'Where', 'Carries'], [...rows, ...lots]));
}

function comingDown(plan: PackPlan, hang: HangResult, wrong: ReadonlySet<string>, units: Units): Node {
  const order = [...new Set(hang.runningOrder.comingDown.flatMap((each) => each.load?.id ?? []))];
  const loads = plan.carts.loads.filter((each) => each.hang === hang.hang);
  const sorted = order.length > 0 ? order.flatMap((id) => loads.filter((each) => each.id === id)) : [...loads].reverse();
  const rows = sorted.map((load, index) => [
    tickBox(),
    { right: String(index + 1) },
    `Boxes ${load.boxes[0]?.position ?? ''} to ${load.boxes.at(-1)?.position ?? ''}`,
    node('span', {}, ...load.boxes.flatMap((each) => [marked(each.serial ?? 'none', wrong), ' '])),
    mono(load.cart ?? 'no cart'),
    { right: formatMass(load.massKg, units) },
  ]);
  const last = [
    tickBox(),
    { right: String(rows.length + 1) },
    'Grid and hoists',
    node(
      'span',
      {},
      ...[hang.gridSerial, ...hoistsOf(hang).map((each) => each.serial)].flatMap((each) =>
        each === null ? [] : [marked(each, wrong), ' '],
      ),
    ),
    '',
    { right: '' },
  ];
  return table(['', { right: 'No.' }, 'What', 'Serials, from the top', 'Onto', { right: 'With its cart' }], [...rows, last]);
}

const downWords = ({ runningOrder }: HangResult): string =>
  runningOrder.comingDown.length === 0
    ? 'No way down is on file: the person in charge of lifting decides it.'
    : 'Lowest first, by the lift sequence, coming down. Its steps stay open on the screen whatever is barred; each one that waits is a hold there.';
