import type { PickFinding, PointSubject } from '#trade';
import type { Comparison, HangResult, PickResult, PicksResult } from '../contract/index.js';
import type { PlanInputs } from '../inputs/index.js';
import { comparedFindings, pickOf } from '../picks/index.js';
import { structurePoints } from './structure-points.js';

interface Placed {
  readonly hang: HangResult;
  readonly pick: PickResult;
}

/** What is over at a point that several picks share, picks of one name at two places, and points that nobody has given a figure for. */
export function pointFindings(inputs: PlanInputs, picks: PicksResult): PickFinding[] {
  return [...shared(inputs, picks.hangs), ...beams(inputs, picks), ...silent(picks)];
}

/** Picks nearer to one another than this hang at one place (common practice, no published source). */
const onePlaceMm = 50;

function shared(inputs: PlanInputs, hangs: readonly HangResult[]): PickFinding[] {
  const all = hangs.flatMap((hang) => hang.picks.map((pick): Placed => ({ hang, pick })));
  return [...new Set(all.map(({ pick }) => pick.point))].flatMap((name): PickFinding[] => {
    const placed = all.filter(({ pick }) => pick.point === name);
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

const beams = (inputs: PlanInputs, { site }: PicksResult): PickFinding[] =>
  (site?.beams ?? []).flatMap(({ name, points, comparisons }) =>
    points.length === 0 ? [] : comparedFindings(inputs, { kind: 'point', name }, comparisons),
  );

const isStructure = ({ fact }: Comparison): boolean => fact?.part.code === 'structure';

/** On the stage plan, and within one hang along its grid; 0 where nobody says where they hang. */
function apart(a: Placed, b: Placed): number {
  if (a.pick.stage && b.pick.stage) return Math.hypot(a.pick.stage.xMm - b.pick.stage.xMm, a.pick.stage.yMm - b.pick.stage.yMm);
  if (a.hang !== b.hang) return 0;
  const xOf = ({ hang, pick }: Placed) => hang.outline.holes.find((each) => each.hole === pick.hole)?.at.xMm ?? 0;
  return Math.abs(xOf(a) - xOf(b));
}

/** One finding for all points, legs and anchors whose structure nobody has given a figure for. */
function silent(picks: PicksResult): PickFinding[] {
  const names = structurePoints(picks).flatMap((each) => (each.allowedKg === null ? [each.point] : []));
  if (names.length === 0) return [];
  const points = names.map((name): PointSubject => ({ kind: 'point', name }));
  return [{ code: 'no-rated-value', subjects: { structure: { kind: 'structure' }, points }, numbers: { count: names.length }, date: null }];
}
