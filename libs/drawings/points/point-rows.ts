import { standardGravityMps2 } from '#kernel';
import { ruleNamed } from '../paper/index.js';
import { type PicksResult, type PointFacts, pointFacts } from '#pack-plan';

type Value = string | number | null;

const tenth = (value: number | null | undefined): number | null =>
  value === null || value === undefined ? null : Math.round(value * 10) / 10;
const all = (facts: PointFacts, of: (pick: PointFacts['picks'][number]) => Value | undefined): string =>
  facts.picks.map((each) => String(of(each) ?? '')).join('; ');
const counted = (models: readonly string[]): string =>
  [...new Set(models)].map((model) => `${models.filter((each) => each === model).length} × ${model}`).join(', ');

/** Every column of the point sheet under a name with its unit: SI figures, a tenth exact; of a point that picks share one value a pick. */
const columns: readonly (readonly [name: string, of: (facts: PointFacts, picks: PicksResult) => Value])[] = [
  ['point', ({ point }) => point.point],
  ['kind', ({ point }) => point.kind],
  ['hangs', ({ point }) => point.hangs.join('; ')],
  ['x_mm', ({ point }) => tenth(point.xMm)],
  ['y_mm', ({ point }) => tenth(point.yMm)],
  ['height_mm', ({ point }) => tenth(point.heightMm)],
  ['trim_height_mm', ({ point }) => point.trimHeightMm],
  ['beam', ({ point }) => point.beam],
  ['high_steel_mm', ({ beam }) => beam?.highSteelMm ?? null],
  ['low_steel_mm', ({ beam }) => beam?.lowSteelMm ?? null],
  ['hoist_chain_steel_kg', ({ point }) => tenth(point.addedKg)],
  ['rest_n', ({ point }) => tenth(point.restN)],
  ['worst_n', ({ point }) => tenth(point.verticalN)],
  ['worst_at', ({ point }) => point.worstAt.join('; ')],
  ['load_rule', (_, picks) => ruleNamed(picks.loadRule)],
  ['less_strict_than_published', (_, picks) => picks.loadRule.belowPublished?.join(' ') || null],
  ['dynamic_factor', (_, picks) => picks.loadRule.dynamicFactor],
  ['dynamic_n', ({ point }) => tenth(point.verticalDynamicN)],
  ['horizontal_n', ({ point }) => tenth(point.horizontalN)],
  ['horizontal_dynamic_n', ({ point }) => tenth(point.horizontalDynamicN)],
  ['toward_deg', ({ point }) => tenth(point.directionDeg)],
  ['allowed_n', ({ point }) => (point.allowedKg === null ? null : tenth(point.allowedKg * standardGravityMps2))],
  ['allowed_by', ({ point }) => point.allowedBy],
  ['hoist', (facts) => all(facts, (each) => each.hoist)],
  ['hoist_serial', (facts) => all(facts, (each) => each.serial)],
  ['hoist_class', (facts) => all(facts, (each) => each.kit?.hoistClass)],
  ['hoist_rated_kg', (facts) => all(facts, (each) => tenth(each.kit?.hoistRatedKg))],
  ['hoist_rated_for', (facts) => all(facts, (each) => each.kit && (each.kit.ratedFor ?? 'maker'))],
  ['hoist_body', (facts) => all(facts, (each) => each.kit?.hoistBody)],
  ['kit_by', (facts) => all(facts, (each) => each.kit?.owner ?? each.kit?.by)],
  ['chain_needed_mm', (facts) => all(facts, (each) => tenth(each.room?.chainToFloorMm ?? each.room?.hookHeightMm))],
  ['chain_on_file_mm', (facts) => all(facts, (each) => tenth(each.kit?.chainOnFileMm))],
  ['chain_carries_rest_kg', (facts) => all(facts, (each) => tenth(each.kit?.chainLoadKg.rest))],
  ['chain_carries_worst_kg', (facts) => all(facts, (each) => tenth(each.kit?.chainLoadKg.worst))],
  ['hook_height_mm', (facts) => all(facts, (each) => tenth(each.room?.hookHeightMm))],
  ['apex_height_mm', (facts) => all(facts, (each) => tenth(each.room?.apexHeightMm))],
  ['shackles', (facts) => (facts.leg ? counted(facts.leg.shackles) : all(facts, (each) => counted(each.kit?.shackles ?? [])))],
  ['slings', (facts) => (facts.leg ? counted(facts.leg.slings) : all(facts, (each) => counted(each.kit?.slings ?? [])))],
  ['leg_length_mm', ({ leg }) => tenth(leg?.lengthMm)],
  ['leg_from_horizontal_deg', ({ leg }) => tenth(leg?.fromHorizontalDeg)],
  ['leg_tension_rest_n', ({ leg, lineN }) => tenth(leg?.tensionN ?? lineN)],
  ['persons_below', (_, { site }) => yes(site?.personsBelow)],
  ['moves_over_persons', (_, { site }) => yes(site?.movesOverPersons)],
  ['use_case', (_, { site }) => site?.useCase?.name ?? null],
  ['wind_limit_mps', ({ windLimitMps }) => windLimitMps],
  ['beyond_wind_limit', (_, { site }) => site?.windAction ?? null],
];

const yes = (value: boolean | undefined): string | null => (value === undefined ? null : value ? 'yes' : 'no');

/** The points as rows for a spreadsheet, the names of the columns first. */
export const pointRows = (picks: PicksResult): readonly (readonly Value[])[] => [
  columns.map(([name]) => name),
  ...pointFacts(picks).map((facts) => columns.map(([, of]) => of(facts, picks))),
];
