import { type HangCase, makeHangCase } from '#hang-statics';
import { invariant, standardGravityMps2 } from '#kernel';
import { type AdapterFrame, type Hang, type Pick, adapterBetween, legSteel } from '#tour-file';
import type { WantedLoad } from '../carts/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { dynamicFactorOf } from '../rules/index.js';

/** What hangs below the grid, from the top: boxes, and the frames that join boxes which do not link by themselves. */
export type HangBody = { readonly position: number; readonly frame: AdapterFrame | null };

export interface HangBodies {
  /** The hang as a case of the statics engine; its boxes are `bodies`, in their order. With more than two picks the first two stand for the geometry. */
  readonly problem: HangCase;
  readonly bodies: readonly HangBody[];
  /** Place of the box of a position among the bodies, counted from 1. */
  readonly placeOf: (position: number) => number;
  /** What hangs on it beside boxes and frames, with its place among the bodies. */
  readonly extras: readonly { readonly what: string; readonly place: number; readonly massKg: number }[];
}

/** Looms hang at the top box of their cart load. A frame's position is that of the box below it. */
export function hangBodies(inputs: PlanInputs, hang: Hang, loads: readonly WantedLoad[]): HangBodies {
  const { catalogue, systems } = inputs.file;
  const grid = modelOf(catalogue.grids, hang.grid);
  const bodies = hang.boxes.flatMap((box, index): HangBody[] => {
    const above = hang.boxes[index - 1];
    const frame = above && adapterBetween(systems, above.model, box.model);
    return [...(frame ? [{ position: index + 1, frame }] : []), { position: index + 1, frame: null }];
  });
  const placeOf = (position: number) =>
    position === 0 ? 0 : bodies.findIndex((each) => each.frame === null && each.position === position) + 1;
  const loom = hang.loom === undefined ? undefined : modelOf(catalogue.looms, hang.loom);
  const extras = [
    ...hang.extras.map(({ what, position, massKg }) => ({
      what: `${what}, ${position === 0 ? 'at the grid' : `at box ${position}`}`,
      place: placeOf(position),
      massKg,
    })),
    ...(loom && loom.massKg > 0
      ? loads.map((load) => ({
          what: `loom of ${load.name}, at box ${load.positions[0]!}`,
          place: placeOf(load.positions[0]!),
          massKg: loom.massKg,
        }))
      : []),
  ];
  const made = makeHangCase({
    gravityMps2: standardGravityMps2,
    dynamicFactor: dynamicFactorOf(inputs.loadRule),
    ...(hang.tiltDownDeg === undefined ? {} : { tiltDownDeg: hang.tiltDownDeg }),
    grid: { massKg: grid.massKg, cgBehindMm: grid.cgBehindMm, cgAboveMm: grid.cgAboveMm, holes: grid.holes.map((each) => ({ ...each })) },
    boxes: bodies.map(({ position, frame }) => {
      const box = hang.boxes[position - 1]!;
      const { massKg, frontHeightMm, cgBehindMm, cgBelowMm, rearLeverMm } = frame ?? modelOf(catalogue.boxes, box.model);
      // The splay of a joint that a frame makes is set below the frame.
      return { massKg, frontHeightMm, cgBehindMm, cgBelowMm, rearLeverMm, splayDeg: frame ? 0 : box.splayDeg };
    }),
    extras: extras.map(({ place, massKg }) => ({ position: place, massKg })),
    picks: hang.picks.slice(0, 2).map((pick) => ({ hole: pick.hole, ...pickMasses(inputs, pick) })),
  });
  invariant(made.ok, 'a hang of a tour file that was read is a hang that can be computed');
  return { bodies, placeOf, extras, problem: made.value };
}

/** Steel below the hook, the hoist, and the whole chain of the hoist, which its point carries wherever it hangs. */
export function pickMasses(inputs: PlanInputs, pick: Pick): { belowHookKg: number; hoistKg: number; chainKg: number } {
  const hoist = modelOf(inputs.file.catalogue.hoists, pick.hoist);
  return { belowHookKg: steelMassKg(inputs, pick), hoistKg: hoist.massKg, chainKg: hoist.chainKgPerM * hoist.chainLengthM };
}

/** The steel of all legs of a bridle. */
export const bridleMassKg = (inputs: PlanInputs, { bridle }: Pick): number =>
  bridle ? legSteel(bridle).reduce((sum, leg) => sum + steelMassKg(inputs, leg), 0) : 0;

const steelMassKg = (inputs: PlanInputs, steel: { readonly shackles: readonly string[]; readonly slings: readonly string[] }): number =>
  [
    ...steel.shackles.map((each) => modelOf(inputs.file.catalogue.shackles, each)),
    ...steel.slings.map((each) => modelOf(inputs.file.catalogue.slings, each)),
  ].reduce((sum, each) => sum + each.massKg, 0);
