import type { HangResult, LegResult, PickResult, PicksResult } from '../contract/index.js';
import { type Pull, greatestOf } from './greatest-pull.js';

/** A point of the structure with everything that pulls at it: the picks that share it, one leg of a bridle, or the anchor of a pull-back. */
export interface StructurePoint {
  readonly point: string;
  readonly kind: 'point' | 'leg' | 'anchor';
  readonly hangs: readonly string[];
  /** Picks that pull there, or the hang of an anchor. */
  readonly of: readonly { readonly hang: string; readonly hole: string | null }[];
  /** Truss or beam; null where none is named. */
  readonly beam: string | null;
  readonly allowedBy: string | null;
  readonly xMm: number | null;
  readonly yMm: number | null;
  readonly trimHeightMm: number;
  /** Above the floor that the carts roll on: the point, or the anchor of a leg or line; null where it is not on file. */
  readonly heightMm: number | null;
  /** Hoist, chain and steel. */
  readonly addedKg: number;
  /** At rest, with a pull-back the worse of with and without its line. Down; negative where an anchor is pulled up. */
  readonly restN: number;
  /** The worst of all moments of lifting and hanging, and the same with the dynamic factor. */
  readonly verticalN: number;
  readonly verticalDynamicN: number;
  /** Which moment that is, one a pick. */
  readonly worstAt: readonly string[];
  readonly horizontalN: number;
  readonly horizontalDynamicN: number;
  /** Toward which it is pulled; null when it is pulled straight down. */
  readonly directionDeg: number | null;
  readonly allowedKg: number | null;
}

type Single = Omit<StructurePoint, 'verticalDynamicN' | 'horizontalN' | 'horizontalDynamicN' | 'directionDeg'> & { readonly pull: Pull };

/** Every point of a show: picks that share one added up at their worst, as if they moved together, bridles leg by leg, and anchors of pull-backs. */
export function structurePoints({ hangs, loadRule: { dynamicFactor } }: PicksResult): readonly StructurePoint[] {
  const single = hangs.flatMap((hang) => [...hang.picks.flatMap((pick) => pointsOf(hang, pick)), ...anchorOf(hang)]);
  return [...new Set(single.map((each) => each.point))].map((name) => {
    const all = single.filter((each) => each.point === name);
    const sum = (of: (each: Single) => number) => all.reduce((total, each) => total + of(each), 0);
    const { pull: _pull, ...first } = all[0]!;
    const aside = greatestOf(all.map((each) => each.pull));
    const verticalN = sum((each) => each.verticalN);
    return {
      ...first,
      hangs: all.flatMap((each) => each.hangs),
      of: all.flatMap((each) => each.of),
      allowedBy: [...new Set(all.flatMap((each) => each.allowedBy ?? []))].join('; ') || null,
      addedKg: sum((each) => each.addedKg),
      restN: sum((each) => each.restN),
      worstAt: [...new Set(all.flatMap((each) => each.worstAt))],
      verticalN,
      verticalDynamicN: verticalN * dynamicFactor,
      horizontalN: aside.newtons,
      horizontalDynamicN: aside.newtons * dynamicFactor,
      directionDeg: aside.directionDeg,
      allowedKg: all.every((each) => each.allowedKg === null) ? null : Math.min(...all.map((each) => each.allowedKg ?? Infinity)),
    };
  });
}

const restOf = (pick: PickResult): number => Math.max(pick.pointLoadN, pick.withoutLine?.pointLoadN ?? 0);
/** The greatest that a pick passes on at any moment, static. */
export const worstOf = (pick: PickResult): number => Math.max(pick.worst?.pointLoadN ?? 0, restOf(pick));

/** What one pick passes to the structure: at its point, or at the anchor of each leg of its bridle. */
function pointsOf(hang: HangResult, pick: PickResult): readonly Single[] {
  const room = hang.room?.picks.find((each) => each.hole === pick.hole);
  const base = {
    hangs: [`${hang.name}, hole ${pick.hole}`],
    of: [{ hang: hang.hang, hole: pick.hole }],
    beam: pick.beam ?? null,
    allowedBy: pick.structureBy ?? null,
    trimHeightMm: hang.trimHeightMm,
    worstAt: [pick.worst?.at ?? 'at trim'],
  };
  const allowedKg = pick.comparisons.find((each) => each.fact?.part.code === 'structure')?.limit ?? null;
  const addedKg = pick.hoistKg + pick.chainKg + pick.belowHookKg + (pick.bridleKg ?? 0);
  const legs = pick.bridle?.legs ?? [];
  if (legs.length === 0)
    return [
      {
        ...base,
        point: pick.point,
        kind: 'point',
        xMm: pick.stage?.xMm ?? null,
        yMm: pick.stage?.yMm ?? null,
        heightMm: room?.pointHeightMm ?? null,
        addedKg,
        restN: restOf(pick),
        verticalN: worstOf(pick),
        pull: pullOf(pick),
        allowedKg,
      },
    ];
  // The legs were solved under the load at rest; under the worst their directions stay and their forces grow with it.
  const grows = worstOf(pick) / restOf(pick);
  const allN = legs.reduce((sum, leg) => sum + leg.verticalN, 0);
  return legs.map((leg, index) => ({
    ...base,
    point: `${pick.point}, leg ${index + 1}`,
    kind: 'leg',
    xMm: leg.stage?.xMm ?? null,
    yMm: leg.stage?.yMm ?? null,
    heightMm: anchorHeightMm(room?.apexHeightMm ?? null, leg),
    // Hoist, chain and steel stand above the apex as the load does: each leg carries its own part of them.
    addedKg: addedKg * (leg.verticalN / allN),
    restN: leg.verticalN,
    verticalN: leg.verticalN * grows,
    pull: { newtons: leg.horizontalN * grows, directionDeg: leg.directionDeg },
    allowedBy: leg.structureBy ?? pick.structureBy ?? null,
    allowedKg: pick.comparisons.find(({ fact }) => fact?.part.code === 'leg-anchor' && fact.part.leg === index + 1)?.limit ?? allowedKg,
  }));
}

/** The more of what its chain pulls aside with at rest and at any moment of lifting. */
function pullOf({ asideN, asideDeg, mostAside }: PickResult): Pull {
  return mostAside && mostAside.newtons > asideN
    ? { newtons: mostAside.newtons, directionDeg: mostAside.directionDeg }
    : { newtons: asideN, directionDeg: asideDeg };
}

const anchorHeightMm = (apexMm: number | null, leg: LegResult): number | null =>
  apexMm === null ? null : apexMm + leg.lengthMm * Math.sin((leg.fromHorizontalDeg * Math.PI) / 180);

/** What the line of a pull-back pulls its anchor with, toward the hang. */
function anchorOf(hang: HangResult): Single[] {
  const { figures, anchor, comparisons } = hang.pullBack ?? {};
  if (!figures) return [];
  const forwardDeg = figures.anchorForwardN < 0 ? 180 : 0;
  return [
    {
      point: `${hang.name}, pull-back`,
      kind: 'anchor',
      hangs: [`${hang.name}, anchor of the pull-back`],
      of: [{ hang: hang.hang, hole: null }],
      beam: null,
      allowedBy: hang.pullBack?.structureBy ?? null,
      xMm: anchor?.stage?.xMm ?? null,
      yMm: anchor?.stage?.yMm ?? null,
      trimHeightMm: hang.trimHeightMm,
      heightMm: anchor?.heightMm ?? null,
      addedKg: 0,
      restN: -figures.anchorUpN,
      verticalN: -figures.anchorUpN,
      worstAt: ['at trim'],
      pull: { newtons: Math.abs(figures.anchorForwardN), directionDeg: turned(forwardDeg + (hang.stage?.azimuthDeg ?? 0)) },
      allowedKg: comparisons?.find((each) => each.fact?.part.code === 'anchor')?.limit ?? null,
    },
  ];
}

/** Between -180 and 180. */
const turned = (deg: number): number => ((deg + 540) % 360) - 180;
