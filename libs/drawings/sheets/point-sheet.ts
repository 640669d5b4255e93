import { standardGravityMps2 } from '#kernel';
import { type HangResult, type LegResult, type PackPlan, type PickResult, type PicksResult, subjectsOf } from '#pack-plan';
import { drawStage } from '../hang/index.js';
import { type Node, type Units, formatForce, formatLength, formatMass, formatNumber, node } from '../tree/index.js';
import { type SheetContext, caution, findingList, sheet, signatures, table } from './sheet-parts.js';

/** A point of the structure with everything that pulls at it: the picks that share it, or one leg of a bridle. */
export interface StructurePoint {
  readonly point: string;
  readonly hangs: readonly string[];
  readonly xMm: number | null;
  readonly yMm: number | null;
  readonly trimHeightMm: number;
  /** Above the floor that the carts roll on: the point, or the anchor of a leg; null where it is not on file. */
  readonly heightMm: number | null;
  /** Hoist, chain and steel. */
  readonly addedKg: number;
  /** At rest, with a pull-back the worse of with and without its line. */
  readonly restN: number;
  /** The worst of all moments of lifting and hanging, and the same with the dynamic factor. */
  readonly verticalN: number;
  readonly verticalDynamicN: number;
  /** Which moment that is, one a pick. */
  readonly worstAt: readonly string[];
  readonly horizontalN: number;
  /** Toward which it is pulled; null when it is pulled straight down. */
  readonly directionDeg: number | null;
  readonly allowedKg: number | null;
}

const restOf = (pick: PickResult): number => Math.max(pick.pointLoadN, pick.withoutLine?.pointLoadN ?? 0);
const worstOf = (pick: PickResult): number => Math.max(pick.worst?.pointLoadN ?? 0, restOf(pick));

const anchorHeightMm = (apexMm: number | null, leg: LegResult): number | null =>
  apexMm === null ? null : apexMm + leg.lengthMm * Math.sin((leg.fromHorizontalDeg * Math.PI) / 180);

/** What one pick passes to the structure: at its point, or at the anchor of each leg of its bridle. */
function pointsOf(hang: HangResult, pick: PickResult, factor: number): readonly StructurePoint[] {
  const room = hang.room?.picks.find((each) => each.hole === pick.hole);
  const base = {
    hangs: [`${hang.name}, hole ${pick.hole}`],
    trimHeightMm: hang.trimHeightMm,
    worstAt: [pick.worst?.at ?? 'at trim'],
    allowedKg: pick.comparisons.find((each) => each.fact?.part.code === 'structure')?.limit ?? null,
  };
  const addedKg = pick.hoistKg + pick.chainKg + pick.belowHookKg;
  const legs = pick.bridle?.legs ?? [];
  if (legs.length === 0)
    return [
      {
        ...base,
        point: pick.point,
        xMm: pick.stage?.xMm ?? null,
        yMm: pick.stage?.yMm ?? null,
        heightMm: room?.pointHeightMm ?? null,
        addedKg,
        restN: restOf(pick),
        verticalN: worstOf(pick),
        verticalDynamicN: worstOf(pick) * factor,
        horizontalN: pick.asideN,
        directionDeg: pick.asideDeg,
      },
    ];
  // The legs were solved under the load at rest; under the worst their directions stay and their forces grow with it.
  const grows = worstOf(pick) / restOf(pick);
  const allN = legs.reduce((sum, leg) => sum + leg.verticalN, 0);
  return legs.map((leg, index) => ({
    ...base,
    point: `${pick.point}, leg ${index + 1}`,
    xMm: leg.stage?.xMm ?? null,
    yMm: leg.stage?.yMm ?? null,
    heightMm: anchorHeightMm(room?.apexHeightMm ?? null, leg),
    addedKg: addedKg * (leg.verticalN / allN),
    restN: leg.verticalN,
    verticalN: leg.verticalN * grows,
    verticalDynamicN: leg.verticalN * grows * factor,
    horizontalN: leg.horizontalN * grows,
    directionDeg: leg.directionDeg,
  }));
}

/** Every point of a show, picks that share one added up, bridles leg by leg. */
export function structurePoints(picks: PicksResult): readonly StructurePoint[] {
  const single = picks.hangs.flatMap((hang) => hang.picks.flatMap((pick) => pointsOf(hang, pick, picks.loadRule.dynamicFactor)));
  const names = [...new Set(single.map((each) => each.point))];
  return names.map((name) => {
    const all = single.filter((each) => each.point === name);
    const sum = (of: (each: StructurePoint) => number) => all.reduce((total, each) => total + of(each), 0);
    const first = all[0]!;
    return {
      ...first,
      hangs: all.flatMap((each) => each.hangs),
      addedKg: sum((each) => each.addedKg),
      restN: sum((each) => each.restN),
      worstAt: [...new Set(all.flatMap((each) => each.worstAt))],
      verticalN: sum((each) => each.verticalN),
      verticalDynamicN: sum((each) => each.verticalDynamicN),
      horizontalN: sum((each) => each.horizontalN),
      allowedKg: all.every((each) => each.allowedKg === null) ? null : Math.min(...all.map((each) => each.allowedKg ?? Infinity)),
    };
  });
}

/** The stage plan with every point of the show, for whoever answers for the structure. */
export function pointSheet(context: SheetContext, units: Units = 'metric'): Node {
  const { picks } = context.plan;
  const points = structurePoints(picks);
  return sheet(
    context,
    'Point loads',
    `${points.length} points`,
    drawStage(picks, units),
    node('div', { class: 'tight' }, pointTable(picks, units)),
    ...picks.hangs.filter((hang) => hang.unshared).map((hang) => node('p', { class: 'stop' }, hang.unshared!.sentence)),
    node(
      'p',
      {},
      `At rest = reaction + steel + hoist + chain. Worst: the greatest of all moments of lifting and hanging; picks that share a point are added at their worst, as if they moved together. Factor ${Number(picks.loadRule.dynamicFactor.toFixed(4))}: ${picks.loadRule.title} (${picks.loadRule.source}; ${picks.loadRule.status}). Toward: 0° to the audience, 90° along y.`,
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
      { right: 'Height' },
      { right: 'Trim' },
      { right: 'Hoist, chain, steel' },
      { right: 'At rest' },
      { right: 'Worst' },
      { right: `× ${Number(picks.loadRule.dynamicFactor.toFixed(4))}` },
      'Worst at',
      { right: 'Aside' },
      { right: 'Allowed' },
    ],
    structurePoints(picks).map((each) => [
      each.hangs.length === 1 && each.hangs[0] === each.point.replace(/ (\S+)$/, ', hole $1')
        ? each.point
        : node('span', {}, each.point, node('small', {}, ` ${each.hangs.join('; ')}`)),
      `${place(each.xMm)} / ${place(each.yMm)}`,
      { right: each.heightMm === null ? 'not on file' : formatLength(each.heightMm, units) },
      { right: formatLength(each.trimHeightMm, units) },
      { right: formatMass(each.addedKg, units) },
      { right: formatForce(each.restN, units) },
      { right: formatForce(each.verticalN, units) },
      { right: formatForce(each.verticalDynamicN, units) },
      each.worstAt.join('; '),
      { right: each.directionDeg === null ? '–' : `${formatForce(each.horizontalN, units)} toward ${formatNumber(each.directionDeg)}°` },
      { right: each.allowedKg === null ? 'not on file' : formatForce(each.allowedKg * standardGravityMps2, units) },
    ]),
  );
}

/** The points as rows for a spreadsheet: names with units, SI figures. */
export function pointRows(picks: PicksResult): readonly (readonly (string | number | null)[])[] {
  return [
    [
      'point',
      'hangs',
      'x_mm',
      'y_mm',
      'height_mm',
      'trim_height_mm',
      'hoist_chain_steel_kg',
      'rest_n',
      'worst_n',
      'worst_at',
      'dynamic_factor',
      'dynamic_n',
      'horizontal_n',
      'toward_deg',
      'allowed_n',
    ],
    ...structurePoints(picks).map((each) => [
      each.point,
      each.hangs.join('; '),
      tenth(each.xMm),
      tenth(each.yMm),
      tenth(each.heightMm),
      each.trimHeightMm,
      tenth(each.addedKg),
      tenth(each.restN),
      tenth(each.verticalN),
      each.worstAt.join('; '),
      picks.loadRule.dynamicFactor,
      tenth(each.verticalDynamicN),
      tenth(each.horizontalN),
      tenth(each.directionDeg),
      each.allowedKg === null ? null : tenth(each.allowedKg * standardGravityMps2),
    ]),
  ];
}

const tenth = (value: number | null): number | null => (value === null ? null : Math.round(value * 10) / 10);
