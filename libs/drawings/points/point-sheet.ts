import { standardGravityMps2 } from '#kernel';
import { type PackPlan, type StructurePoint, structurePoints, subjectsOf } from '#pack-plan';
import { drawStage } from '../hang/index.js';
import { kitTable, legNodes } from './kit-table.js';
import { beamNodes, siteNodes } from './site-nodes.js';
import { type Node, type Units, formatForce, formatLength, formatMass, formatNumber, node } from '../tree/index.js';
import { type SheetContext, caution, findingList, ruleNamed, sheet, signatures, table } from '../paper/index.js';

/** The stage plan with every point of the show, for whoever answers for the structure. */
export function pointSheet(context: SheetContext, units: Units = 'metric'): Node {
  const { picks } = context.plan;
  const points = structurePoints(picks);
  return sheet(
    context,
    'Point loads',
    `${points.length} points`,
    ...siteNodes(picks),
    drawStage(picks, units),
    node('div', { class: 'tight' }, pointTable(picks, units)),
    ...beamNodes(picks, units),
    node('h2', {}, 'Hoists, chain and steel'),
    node('div', { class: 'dense' }, kitTable(picks, units)),
    ...legNodes(picks, units),
    ...picks.hangs.filter((hang) => hang.unshared).map((hang) => node('p', { class: 'stop' }, hang.unshared!.sentence)),
    node(
      'p',
      {},
      `At rest = reaction + steel + hoist + chain. Worst: the greatest of all moments of lifting and hanging; picks that share a point are added at their worst, as if they moved together. Factor ${Number(picks.loadRule.dynamicFactor.toFixed(4))}: ${ruleNamed(picks.loadRule)} (${picks.loadRule.source}; ${picks.loadRule.status}). Negative: pulled up. Aside: the greatest at rest and while lifting, and the same with the factor; toward 0°: to the audience, 90°: along y.`,
    ),
    findingList(
      context.plan.findings.filter((each) => each.weight === 'stop' || subjectsOf(each).some((subject) => subject.kind === 'structure')),
      'picks',
    ),
    caution(picks.caution),
    signatures(),
  );
}

export function pointTable(picks: PackPlan['picks'], units: Units): Node {
  const place = (value: number | null) => (value === null ? '–' : formatNumber(value));
  return table(
    [
      'Point',
      'x / y, mm',
      { right: 'Height, trim' },
      { right: 'Hoist, chain, steel' },
      { right: 'At rest' },
      { right: 'Worst' },
      { right: `× ${Number(picks.loadRule.dynamicFactor.toFixed(4))}` },
      'Worst at',
      `Aside, × ${Number(picks.loadRule.dynamicFactor.toFixed(4))}`,
      'Allowed, by',
    ],
    structurePoints(picks).map((each) => [
      nameCell(each),
      `${place(each.xMm)} / ${place(each.yMm)}`,
      heightCell(each, units),
      { right: formatMass(each.addedKg, units) },
      { right: formatForce(each.restN, units) },
      { right: formatForce(each.verticalN, units) },
      { right: formatForce(each.verticalDynamicN, units) },
      each.worstAt.join('; '),
      asideCell(each, units),
      allowedCell(each, units),
    ]),
  );
}

/** A point with what hangs there, where its name does not say it. */
function nameCell({ point, kind, hangs }: StructurePoint): Node | string {
  const ofOnePick = hangs.length === 1 && hangs[0] === point.replace(/, leg \d+$/, '').replace(/ (\S+)$/, ', hole $1');
  return kind === 'anchor' || ofOnePick ? point : node('span', {}, point, node('small', {}, ` ${hangs.join('; ')}`));
}

function heightCell({ heightMm, trimHeightMm }: StructurePoint, units: Units): Node {
  const height = heightMm === null ? 'not on file' : formatLength(heightMm, units);
  return node('span', {}, height, node('br'), node('small', { class: 'line' }, ` trim ${formatLength(trimHeightMm, units)}`));
}

/** What pulls a point aside, as it is and times the factor. */
function asideCell({ horizontalN, horizontalDynamicN, directionDeg }: StructurePoint, units: Units): Node | string {
  if (directionDeg === null) return '–';
  const line = (text: string) => node('span', { class: 'line' }, text);
  const forces = [line(`${formatForce(horizontalN, units)},`), ' ', line(formatForce(horizontalDynamicN, units)), ' '];
  return node('span', {}, ...forces, node('small', { class: 'line' }, `toward ${formatNumber(directionDeg)}°`));
}

function allowedCell({ allowedKg, allowedBy }: StructurePoint, units: Units): Node | string {
  if (allowedKg === null) return 'not on file';
  const force = node('span', { class: 'line' }, formatForce(allowedKg * standardGravityMps2, units));
  return node('span', {}, force, node('br'), node('small', {}, allowedBy ?? 'by whom is not on file'));
}
