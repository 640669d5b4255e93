import {
  type Comparison,
  type DueItem,
  type HangResult,
  type PackPlan,
  type PickResult,
  type RunningOrder,
  stepKey,
  tickText,
} from '../contract/index.js';
import { wholeCarts, wholeTruck, type KeptCarts, type KeptTruck } from './whole-freight.js';
import { wholeFingerprint } from './whole-fingerprint.js';
import { type KeptFinding, wholeFindings } from './whole-findings.js';
import { type KeptHardware, wholeHardware } from './whole-hardware.js';

/** What every plan said of a pick and of a hang, however long ago it was made. */
type Since<T, K extends keyof T> = Pick<T, K> & Partial<T>;
type KeptPick = Since<
  PickResult,
  'hole' | 'place' | 'hoist' | 'hoistSerial' | 'reactionN' | 'hookLoadKg' | 'belowHookKg' | 'hoistKg' | 'chainKg'
> &
  Pick<PickResult, 'pointLoadN' | 'pointLoadDynamicN' | 'comparisons' | 'working' | 'stage'>;
type KeptJoint = Since<HangResult['joints'][number], 'position' | 'loadN' | 'rearLinkN' | 'frontPinN' | 'comparisons'>;
type KeptHang = Omit<Partial<HangResult>, 'picks' | 'joints' | 'outline'> &
  Pick<HangResult, 'hang' | 'grid' | 'boxes' | 'trimHeightMm' | 'tiltDownDeg' | 'massKg' | 'centreOfGravity'> & {
    readonly picks: readonly KeptPick[];
    readonly joints: readonly KeptJoint[];
    readonly outline: Since<HangResult['outline'], 'grid' | 'holes'> & {
      readonly boxes: readonly Since<HangResult['outline']['boxes'][number], 'position' | 'corners' | 'frontPivot' | 'tiltDownDeg'>[];
    };
  };
export type KeptPlan = Omit<PackPlan, 'picks' | 'hardware' | 'carts' | 'truck' | 'due' | 'findings'> & {
  readonly findings: readonly KeptFinding[];
  readonly carts: KeptCarts;
  readonly truck: KeptTruck;
  readonly due: Omit<PackPlan['due'], 'items'> & { readonly items: readonly Since<DueItem, Exclude<keyof DueItem, 'fact'>>[] };
  readonly picks: Omit<PackPlan['picks'], 'hangs' | 'loadRule'> & {
    readonly hangs: readonly KeptHang[];
    readonly loadRule: Partial<PackPlan['picks']['loadRule']>;
  };
  readonly hardware: KeptHardware;
};

/** Each result alone in the shape of a new one: plans are read part by part as well. */
export const wholeDue = (kept: KeptPlan['due']): PackPlan['due'] => ({
  ...kept,
  items: kept.items.map((item) => ({ ...item, fact: item.fact ?? null })),
});

/** A kept plan in the shape of a new one: what it did not say yet is left open, so that a revision prints years later. */
export function wholePlan(kept: KeptPlan): PackPlan {
  return {
    ...kept,
    fingerprint: wholeFingerprint(kept.fingerprint),
    carts: wholeCarts(kept.carts),
    truck: wholeTruck(kept.truck),
    due: wholeDue(kept.due),
    findings: wholeFindings(kept),
    hardware: wholeHardware(kept.hardware),
    picks: wholePicks(kept.picks),
  };
}

/** Steps by their place in the list of their hang's id, however their key was once written. */
function withKeys(hang: string, order: RunningOrder): RunningOrder {
  const keyed = (way: 'up' | 'down', steps: RunningOrder['goingUp']) =>
    steps.map((step, index) => ({ ...step, key: tickText(stepKey(hang, way, index + 1)) }));
  return { ...order, goingUp: keyed('up', order.goingUp), comingDown: keyed('down', order.comingDown) };
}

export const wholePicks = (kept: KeptPlan['picks']): PackPlan['picks'] => ({
  ...kept,
  loadRule: {
    id: '',
    jurisdiction: '',
    edition: null,
    readingTolerance: null,
    ...kept.loadRule,
  } as PackPlan['picks']['loadRule'],
  hangs: kept.hangs.map(wholeHang),
});

/** What was compared is known again of the structure above a point alone: readings and point loads depend on it. */
function wholeComparison(kept: Omit<Comparison, 'fact'> & Partial<Pick<Comparison, 'fact'>>): Comparison {
  const code = kept.verdict === 'over' ? 'over' : kept.verdict === 'within' ? 'within' : 'no-rated-value';
  const landed = kept.what === 'structure above this point' ? ({ code, part: { code: 'structure' } } as const) : null;
  return { ...kept, rated: kept.rated ?? null, factors: kept.factors ?? [], fact: kept.fact ?? landed };
}

export function wholeHang(kept: KeptHang): HangResult {
  return {
    name: kept.hang,
    tiltRange: null,
    holeTilts: [],
    masses: [],
    unshared: null,
    stages: [],
    pullBack: null,
    secondary: [],
    windLimitMps: null,
    room: null,
    runningOrder: { manual: 'This plan was made before the lift sequence was part of it', approved: null, goingUp: [], comingDown: [] },
    ...kept,
    envelope: kept.envelope ? { ...kept.envelope, pushed: kept.envelope.pushed ?? null } : null,
    ...(kept.runningOrder && { runningOrder: withKeys(kept.hang, kept.runningOrder) }),
    picks: kept.picks.map((pick) => ({
      point: `${kept.hang} ${pick.hole}`,
      alone: null,
      withoutLine: null,
      worst: null,
      asideN: 0,
      asideDeg: null,
      bridle: null,
      enough: null,
      ...pick,
      comparisons: pick.comparisons.map(wholeComparison),
    })),
    joints: kept.joints.map((joint) => ({
      adapter: null,
      tiltDownDeg: 0,
      distanceMm: 0,
      leverMm: 0,
      frontPins: { xN: 0, zN: 0 },
      ...joint,
    })),
    outline: {
      gridWidthMm: 0,
      adapters: [],
      ...kept.outline,
      boxes: kept.outline.boxes.map((box) => ({ ...box, widthMm: box.widthMm ?? 0 })),
    },
  } as HangResult;
}
