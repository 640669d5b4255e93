import type { AllocationCase, TourMoves } from '#cart-allocation';
import type { TourFile } from '#tour-file';
import type { Words } from '#words';
import { type WantedLoad, allocationCase, planCarts, wantedLoads } from '../carts/index.js';
import type { MoveWeights, SolveLimits, WholeTour } from '../contract/index.js';
import { type PlanInputs, gatherInputs } from '../inputs/index.js';

/** One show of the tour with what it wants. */
export interface ShowWanted {
  readonly inputs: PlanInputs;
  readonly problem: AllocationCase;
  /** By the name that they have over the tour. */
  readonly loads: ReadonlyMap<string, WantedLoad>;
  /** Places that no box or no cart is found for: they stay empty, as in the show's own plan. */
  readonly empty: readonly { readonly load: string; readonly name: string; readonly positions: readonly number[] }[];
}

/** Enough to tell which places stay empty: that is found out before any search. */
const littleWork = 1000;

/** A load is named once over the tour. */
export const nameOver = (show: string, load: string): string => `${show}/${load}`;

export const showsWanted = (file: TourFile, limits: SolveLimits, words: Words): readonly ShowWanted[] =>
  file.tour.shows.map((show) => {
    const inputs = gatherInputs(file, show.id, words);
    const found = new Map(planCarts(inputs, { ...limits, work: littleWork }).loads.map((load) => [load.id, load.boxes]));
    const isEmpty = (load: string, position: number) => found.get(load)?.find((box) => box.position === position)?.serial === null;
    const all = wantedLoads(inputs);
    const empty = all
      .map(({ id, name, positions }) => ({ load: id, name, positions: positions.filter((each) => isEmpty(id, each)) }))
      .filter((each) => each.positions.length > 0);
    const leaveOut = new Set(empty.flatMap(({ load, positions }) => positions.map((position) => `${load}/${position}`)));
    const loads = all
      .map((load) => ({ ...load, positions: load.positions.filter((position) => !leaveOut.has(`${load.id}/${position}`)) }))
      .filter((load) => load.positions.length > 0);
    const problem = allocationCase(inputs, loads, leaveOut);
    return { inputs, problem, loads: new Map(loads.map((load) => [nameOver(show.id, load.id), load])), empty };
  });

/** The tour as the engine has it: from the floor of the register, or from the floor of the plan that is kept. The first show is made ready at the depot. */
export function tourMoves(wanted: readonly ShowWanted[], { depot, dock }: MoveWeights, kept: WholeTour | null): TourMoves {
  const floor = kept ? floorKept(wanted, kept) : floorNow(wanted);
  return {
    floor,
    shows: wanted.map(({ inputs, problem }, index) => ({
      id: inputs.show.id,
      weight: index === 0 ? depot : dock,
      loads: problem.loads.map((load) => ({ ...load, id: nameOver(inputs.show.id, load.id) })),
      // A box that is no longer where a kept plan has it is on nobody's list.
      unusable: Object.keys(floor.boxes).filter((box) => inputs.availability.get(box)?.reason !== null),
    })),
  };
}

/** A cart that is out at one show is out for all of them. */
function floorNow(wanted: readonly ShowWanted[]): TourMoves['floor'] {
  const [first] = wanted;
  const out = new Set(wanted.flatMap(({ problem }) => problem.carts.flatMap((cart) => (cart.givesOnly ? [cart.id] : []))));
  const { carts, loose, boxes } = first!.problem;
  return { carts: carts.map((cart) => (out.has(cart.id) ? { ...cart, givesOnly: true } : cart)), loose, boxes, unusable: [] };
}

/** Carts that have come since stand at its end, empty. */
function floorKept(wanted: readonly ShowWanted[], { floor: { carts, loose } }: WholeTour): TourMoves['floor'] {
  const now = floorNow(wanted);
  const stood = new Map(carts.map(({ cart, boxes }) => [cart, boxes]));
  const serials = [...carts.flatMap((each) => each.boxes), ...loose];
  const modelOf = (serial: string) => wanted[0]!.inputs.items.get(serial)?.model ?? 'no longer on file';
  return {
    carts: [
      ...now.carts.map((cart) => ({ ...cart, stack: [...(stood.get(cart.id) ?? [])] })),
      ...carts
        .filter(({ cart }) => !now.carts.some((each) => each.id === cart))
        .map(({ cart, boxes }) => ({ id: cart, capacity: boxes.length, stack: [...boxes], givesOnly: true })),
    ],
    loose: [...loose],
    boxes: Object.fromEntries(serials.map((serial) => [serial, modelOf(serial)])),
    unusable: [],
  };
}
