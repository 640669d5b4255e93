import type { HangCase, PullBack } from '#hang-statics';
import { type CartModel, type Hang, closingOf } from '#tour-file';
import type { LiftCase } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';

/** A cart load as far as its lift is concerned. */
export interface LoadOfLift {
  readonly name: string;
  readonly cartModel: string | null;
  readonly boxes: readonly { readonly position: number }[];
}

interface Bodies {
  readonly problem: HangCase;
  readonly bodies: readonly { readonly position: number; readonly frame: Frame | null }[];
  readonly placeOf: (position: number) => number;
}
interface Frame {
  readonly frontHeightMm: number;
  readonly rearHeightMm: number;
  readonly depthMm: number;
}

/** What is lifted, in which loads, and how their joints close. */
export function liftCase(
  inputs: PlanInputs,
  hang: Hang,
  { problem, bodies, placeOf }: Bodies,
  loads: readonly LoadOfLift[],
  pull?: PullBack,
): LiftCase {
  const { catalogue, systems } = inputs.file;
  const grid = modelOf(catalogue.grids, hang.grid);
  const system = systems.find((each) => each.id === grid.system);
  // A frame goes up with the load above it.
  const lastPlace = (place: number) => (bodies[place]?.frame ? place + 1 : place);
  return {
    problem,
    plan: {
      cartLoads: loads.map((load) => ({
        firstPosition: placeOf(load.boxes[0]!.position),
        lastPosition: lastPlace(placeOf(load.boxes.at(-1)!.position)),
        baseKg: baseMassKg(load.cartModel === null ? catalogue.carts : [modelOf(catalogue.carts, load.cartModel)]),
      })),
      closedSplayDeg: system?.closedSplayDeg ?? 0,
      liftTiltDownDeg: hang.liftTiltDownDeg ?? 0,
      closing: closingOf(system),
      comesDown: true,
      ...(pull ? { pull } : {}),
    },
    loads: loads.map((each) => each.name),
    bodies: bodies.map(({ position, frame }) => {
      const { frontHeightMm, rearHeightMm, depthMm } = frame ?? modelOf(catalogue.boxes, hang.boxes[position - 1]!.model);
      return { position, isFrame: frame !== null, frontHeightMm, rearHeightMm, depthMm };
    }),
    grid: { lengthMm: grid.lengthMm, heightMm: Math.max(...grid.holes.map((each) => each.aboveMm), 60) },
  };
}

/** The heaviest of the bases that it could be; where the base alone is not on file, the whole cart. */
const baseMassKg = (carts: readonly CartModel[]): number => Math.max(0, ...carts.map((each) => each.baseMassKg ?? each.massKg));
