import { standardGravityMps2 } from '#kernel';
import type { RatedLoad } from '#tour-file';
import type { PickFinding } from '#trade';
import type { Comparison, HangResult, PickResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { compareRated, ratedKg, toldAt } from '../rules/index.js';
import { comparedFindings, pickOf } from './compared-findings.js';

interface Placed {
  readonly hang: HangResult;
  readonly pick: PickResult;
}

/** Picks by the point that they hang at, in the order of the hangs. */
function byPoint(hangs: readonly HangResult[]): ReadonlyMap<string, readonly Placed[]> {
  const all = hangs.flatMap((hang) => hang.picks.map((pick) => ({ hang, pick })));
  return new Map([...new Set(all.map(({ pick }) => pick.point))].map((name) => [name, all.filter(({ pick }) => pick.point === name)]));
}

/**
 * The structure above each point against the sum of the worst that its picks carry, with the dynamic factor: picks that share a point are taken as
 * moving together, and the least that anybody allows there counts.
 */
export function withStructure(inputs: PlanInputs, hangs: readonly HangResult[]): readonly HangResult[] {
  const compared = new Map([...byPoint(hangs)].map(([point, placed]) => [point, structureAt(inputs, point, placed)]));
  return hangs.map((hang) => ({
    ...hang,
    picks: hang.picks.map((pick) => ({ ...pick, comparisons: [...pick.comparisons, ...(compared.get(pick.point) ?? [])] })),
  }));
}

function structureAt(inputs: PlanInputs, point: string, placed: readonly Placed[]): readonly Comparison[] {
  const allowed = placed.flatMap(({ hang, pick }): RatedLoad[] => {
    const found = inputs.hangs.find((each) => each.id === hang.hang)!.picks.find((each) => each.hole === pick.hole)!;
    return found.structure ? [found.structure] : [];
  });
  if (allowed.length === 0) return [];
  const least = allowed.reduce((a, b) => (ratedKg(b) < ratedKg(a) ? b : a));
  const sumN = placed.reduce((sum, { pick }) => sum + (pick.worst?.pointLoadDynamicN ?? pick.pointLoadDynamicN), 0);
  const part = placed.length > 1 ? ({ code: 'structure', point } as const) : ({ code: 'structure' } as const);
  const comparison = compareRated(inputs, part, sumN / standardGravityMps2, least, []);
  const at = placed.length === 1 ? placed[0]!.pick.worst?.fact : undefined;
  return [at && at.code !== 'at-trim' ? toldAt(inputs, comparison, { stage: at }) : comparison];
}

/** Picks nearer to one another than this hang at one place (common practice, no published source). */
const onePlaceMm = 50;

/** Points that several picks share: what is over there, once for each, and picks of one name at two places. */
export function sharedPointFindings(inputs: PlanInputs, hangs: readonly HangResult[]): PickFinding[] {
  return [...byPoint(hangs)].flatMap(([name, placed]): PickFinding[] => {
    if (placed.length < 2) return [];
    const point = { kind: 'point' as const, name };
    const apartMm = Math.max(...placed.flatMap((a) => placed.map((b) => apart(a, b))));
    return [
      ...comparedFindings(inputs, point, placed[0]!.pick.comparisons.filter(isStructure)),
      ...(apartMm > onePlaceMm
        ? [
            {
              code: 'point-at-two-places' as const,
              subjects: { point, picks: placed.map(({ hang, pick }) => pickOf(hang, pick.hole)) },
              numbers: { apartMm },
              date: null,
            },
          ]
        : []),
    ];
  });
}

const isStructure = ({ fact }: Comparison): boolean => fact?.part.code === 'structure';

/** On the stage plan, and within one hang along its grid; 0 where nobody says where they hang. */
function apart(a: Placed, b: Placed): number {
  if (a.pick.stage && b.pick.stage) return Math.hypot(a.pick.stage.xMm - b.pick.stage.xMm, a.pick.stage.yMm - b.pick.stage.yMm);
  if (a.hang !== b.hang) return 0;
  const xOf = ({ hang, pick }: Placed) => hang.outline.holes.find((each) => each.hole === pick.hole)?.at.xMm ?? 0;
  return Math.abs(xOf(a) - xOf(b));
}
