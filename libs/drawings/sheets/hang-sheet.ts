import { type Comparison, type HangResult, concernsHang } from '#pack-plan';
import { drawHang, headroomText, roundAbout, trimText } from '../hang/index.js';
import { type Node, type Units, formatForce, formatLength, formatMass, formatNumber, node } from '../tree/index.js';
import { type SheetContext, caution, findingList, mono, ruleNamed, sheet, signatures, table } from '../paper/index.js';

/** A hang with its drawing, boxes and pick loads; room for the competent person. */
export function hangSheet(context: SheetContext, hang: HangResult, units: Units = 'metric'): Node {
  const { plan } = context;
  const picks = hang.picks.map((pick) => [
    `hole ${pick.hole} (${pick.place})`,
    mono(pick.hoistSerial ?? 'none found'),
    { right: formatForce(pick.reactionN, units) },
    { right: formatMass(pick.hookLoadKg, units) },
    // With a pull-back the worse of with and without its line, as on the point sheet.
    { right: formatForce(Math.max(pick.pointLoadN, pick.withoutLine?.pointLoadN ?? 0), units) },
    { right: formatForce(pick.worst?.pointLoadN ?? pick.pointLoadN, units) },
    { right: formatForce(pick.worst?.pointLoadDynamicN ?? pick.pointLoadDynamicN, units) },
    pick.worst?.at ?? 'at trim',
  ]);
  const boxes = hang.boxes.map((box) => [
    { right: String(box.position) },
    mono(box.serial ?? 'missing'),
    box.model,
    { right: `${box.splayDeg}°` },
    box.cart ?? '',
    { right: formatMass(box.hangsBelowKg, units) },
  ]);
  const checks = hang.picks.flatMap((pick) => [
    ...pick.comparisons
      .filter((each) => each.verdict !== 'within')
      .map((each) => node('li', { class: 'stop' }, `Hole ${pick.hole}, ${each.sentence}`)),
    node('li', {}, `Hole ${pick.hole}: ${nearestSentence(pick.comparisons)}`),
  ]);
  return sheet(
    { ...context, of: hang.hang },
    hang.name,
    `${hang.boxes.length} boxes on ${hang.grid}${hang.gridSerial ? ` ${hang.gridSerial}` : ''} · ${formatMass(hang.massKg, units)}`,
    node(
      'div',
      { class: 'half' },
      drawHang(hang, units),
      node('div', {}, table([{ right: 'Pos.' }, 'Serial', 'Model', { right: 'Splay' }, 'Cart', { right: 'Below' }], boxes)),
    ),
    node(
      'p',
      {},
      `Grid ${angle(hang.tiltDownDeg)}, last box ${angle(hang.bottomAimDownDeg)}. ${slackSentence(hang)} ${windSentence(hang)}`,
    ),
    ...(hang.room ? [node('p', {}, `${heightsSentence(hang, hang.room, units)}${roundAbout(plan.picks, hang, units)}`)] : []),
    node('h2', {}, 'Pick loads'),
    table(
      [
        'Pick',
        'Hoist',
        { right: 'Reaction' },
        { right: 'At the hook' },
        { right: 'Point at rest' },
        { right: 'Point, worst' },
        { right: `Worst × ${plan.picks.loadRule.dynamicFactor}` },
        'Worst at',
      ],
      picks,
    ),
    node(
      'p',
      {},
      `Load rule: ${ruleNamed(plan.picks.loadRule)} (${plan.picks.loadRule.status}). Point load = reaction + steel + hoist + chain.`,
    ),
    node('ul', {}, ...checks),
    findingList(
      plan.findings.filter((each) => concernsHang(each, hang)),
      'picks',
    ),
    caution(plan.picks.caution),
    signatures(),
  );
}

/** Trim, lowest point, and of each pick its hook, its point and the chain between hoist and hook. */
function heightsSentence(hang: HangResult, room: NonNullable<HangResult['room']>, units: Units): string {
  const picks = room.picks.map((each) => {
    const point = each.pointHeightMm === null ? '' : `, point at ${formatLength(each.pointHeightMm, units)}`;
    return `hole ${each.hole}: hook at ${formatLength(each.hookHeightMm, units)}${point}, ${headroomText(each, units)}`;
  });
  return `Heights: ${trimText(hang, units)}; ${picks.join('; ')}.`;
}

/** What leaves least of all that was compared at a pick; the page of the pick holds the rest. */
export function nearestSentence(comparisons: readonly Comparison[]): string {
  const within = comparisons.filter((each) => each.verdict === 'within' && each.limit !== null);
  const worst = within.reduce<Comparison | undefined>((a, b) => (a && a.value / a.limit! >= b.value / b.limit! ? a : b), undefined);
  return worst ? `${within.length} compared and within. Nearest to its limit: ${worst.sentence}` : 'Nothing could be compared.';
}

export const windSentence = (hang: HangResult): string =>
  hang.windLimitMps === null
    ? 'No wind limit of the rigging system is on file.'
    : `Wind limit of the rigging system: ${hang.windLimitMps} m/s (maker’s manual).`;

export const angle = (degrees: number): string => `${formatNumber(Math.abs(degrees), 1)}° nose ${degrees >= 0 ? 'down' : 'up'}`;

export function slackSentence(hang: Pick<HangResult, 'slackAtDeg'> & Partial<Pick<HangResult, 'unshared' | 'pullBack'>>): string {
  if (hang.unshared) return 'More than two points in a line: no shares are stated. Measure.';
  if (hang.pullBack?.figures) return 'With the pull-back the slack tilts of the picks do not apply.';
  if (!hang.slackAtDeg) return 'One pick: the hole decides the tilt.';
  return `The front pick goes slack at ${angle(hang.slackAtDeg.frontSlack)}, the rear one at ${angle(hang.slackAtDeg.rearSlack)}.`;
}
