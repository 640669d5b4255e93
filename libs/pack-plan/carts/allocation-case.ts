import { type AllocationCase, type AllocationInput, cutHang, makeAllocationCase } from '#cart-allocation';
import { invariant } from '#kernel';
import { type CartModel, type Hang, hangName } from '#tour-file';
import { type PlanInputs, modelOf } from '../inputs/index.js';

/** One cart load as the design wants it, before boxes and a cart are found for it. */
export interface WantedLoad {
  readonly id: string;
  readonly name: string;
  readonly hang: Hang;
  readonly number: number;
  readonly of: number;
  /** Positions in the hang, top first, counted from 1. */
  readonly positions: readonly number[];
}

/** Cuts every hang of the show into cart loads: consecutive positions, fewest carts, models that may share one. */
export function wantedLoads(inputs: PlanInputs): readonly WantedLoad[] {
  const capacity = usualCapacity(inputs);
  return inputs.hangs.flatMap((hang) => {
    const loads = cutHang(
      hang.boxes.map(({ model }) => ({ model })),
      { capacity, partLoad: hang.partLoad, mayShare: (a, b) => mayShareCart(inputs, a, b) },
    );
    return loads.map((load, index) => ({
      id: `${hang.id} ${span(load.positions)}`,
      name: `${hangName(hang)} ${span(load.positions)}`,
      hang,
      number: index + 1,
      of: loads.length,
      positions: load.positions,
    }));
  });
}

/** The floor and the loads as a case of the allocation engine. `leaveOut` holds places ("load id/position") for which there is no box. */
export function allocationCase(inputs: PlanInputs, loads: readonly WantedLoad[], leaveOut: ReadonlySet<string>): AllocationCase {
  const { file, availability } = inputs;
  const carts = cartsOf(inputs);
  const standing = new Set(file.items.flatMap((item) => (item.kind === 'cart' ? (item.stack ?? []) : [])));
  const loose = file.items
    .filter((item) => item.kind === 'box' && !standing.has(item.id) && item.in === undefined && item.depot === file.tour.depot)
    .map((item) => item.id);
  const serials = [...carts.flatMap((cart) => cart.stack), ...loose];
  const here = new Set(serials);
  const wanted = loads
    .map((load) => ({
      id: load.id,
      boxes: load.positions
        .filter((position) => !leaveOut.has(`${load.id}/${position}`))
        .map((position) => load.hang.boxes[position - 1]!)
        .map((box) => (box.serial === undefined ? { model: box.model } : { serial: box.serial })),
    }))
    .filter((load) => load.boxes.length > 0);
  const keptFor = pinnedToNothing(loads, leaveOut);
  const absent = wanted.flatMap((load) => load.boxes.flatMap(({ serial }) => (serial !== undefined && !here.has(serial) ? [serial] : [])));
  const modelOfBox = (serial: string) => [serial, inputs.items.get(serial)!.model] as const;
  const made = makeAllocationCase({
    carts,
    loose,
    boxes: Object.fromEntries(serials.map(modelOfBox)),
    unusable: serials.filter((serial) => availability.get(serial)!.reason !== null || keptFor.has(serial)),
    absent: Object.fromEntries(absent.map(modelOfBox)),
    loads: wanted,
  });
  invariant(made.ok, 'a tour file that was read is a floor: every box in one place, every cart once');
  return made.value;
}

/** Boxes that the design wants by their serial in places that are left out, and nowhere else: they are not put where another box would do. */
function pinnedToNothing(loads: readonly WantedLoad[], leaveOut: ReadonlySet<string>): ReadonlySet<string> {
  const pins = loads.flatMap(({ id, hang, positions }) =>
    positions.flatMap((position) => {
      const { serial } = hang.boxes[position - 1]!;
      return serial === undefined ? [] : [{ serial, isOut: leaveOut.has(`${id}/${position}`) }];
    }),
  );
  const placed = new Set(pins.flatMap(({ serial, isOut }) => (isOut ? [] : [serial])));
  return new Set(pins.flatMap(({ serial, isOut }) => (isOut && !placed.has(serial) ? [serial] : [])));
}

/**
 * Carts at the depot. One that may not travel carries nothing, but what stands on it can be lifted off: all of it, or, where another tour holds the
 * cart, what stands above the first box that the other tour holds as well.
 */
function cartsOf(inputs: PlanInputs): AllocationInput['carts'] {
  const { file, availability } = inputs;
  return file.items.flatMap((item) => {
    if (item.kind !== 'cart' || item.depot !== file.tour.depot) return [];
    const { capacity, carries } = cartModel(inputs, item.model);
    const { reason, isPromised } = availability.get(item.id)!;
    const stack = item.stack ?? [];
    if (reason === null) return [{ id: item.id, capacity, stack: [...stack], ...(carries ? { carries: [...carries] } : {}) }];
    const held = isPromised ? stack.findIndex((serial) => availability.get(serial)!.isPromised) : -1;
    return [{ id: item.id, capacity, stack: stack.slice(0, held < 0 ? stack.length : held), givesOnly: true }];
  });
}

export const cartModel = (inputs: PlanInputs, name: string): CartModel => modelOf(inputs.file.catalogue.carts, name);

/** Capacity of most carts of the depot (four, by common practice of the trade; no published source). */
function usualCapacity(inputs: PlanInputs): number {
  const tally = new Map<number, number>();
  for (const item of inputs.file.items) {
    if (item.kind !== 'cart') continue;
    const { capacity } = cartModel(inputs, item.model);
    tally.set(capacity, (tally.get(capacity) ?? 0) + 1);
  }
  return [...tally].sort(([a, m], [b, n]) => n - m || b - a)[0]?.[0] ?? 4;
}

function mayShareCart(inputs: PlanInputs, a: string, b: string): boolean {
  if (a === b) return true;
  const boxes = inputs.file.catalogue.boxes;
  const allows = (from: string, to: string) => boxes.find((each) => each.model === from)?.mayShareCartWith?.includes(to) === true;
  return allows(a, b) && allows(b, a);
}

const span = (positions: readonly number[]): string => (positions.length === 1 ? `${positions[0]}` : `${positions[0]}-${positions.at(-1)}`);
