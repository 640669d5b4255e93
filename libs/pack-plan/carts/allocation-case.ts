import type { AllocationCase } from '#cart-allocation';
import { cutHang } from '#cart-allocation';
import type { CartModel, Hang } from '#tour-file';
import { type PlanInputs, modelOf } from '../inputs/index.js';

/** One cart load as the design wants it, before boxes and a cart are found for it. */
export interface WantedLoad {
  readonly id: string;
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
  const carts = file.items.filter((item) => item.kind === 'cart' && availability.get(item.id)!.reason === null);
  const standing = new Set(file.items.flatMap((item) => (item.kind === 'cart' ? (item.stack ?? []) : [])));
  const loose = file.items.filter(
    (item) => item.kind === 'box' && !standing.has(item.id) && item.in === undefined && item.depot === file.tour.depot,
  );
  const serials = [...carts.flatMap((cart) => cart.stack ?? []), ...loose.map((item) => item.id)];
  return {
    carts: carts.map((cart) => {
      const model = cartModel(inputs, cart.model);
      return {
        id: cart.id,
        capacity: model.capacity,
        stack: [...(cart.stack ?? [])],
        ...(model.carries ? { carries: [...model.carries] } : {}),
      };
    }),
    loose: loose.map((item) => item.id),
    boxes: Object.fromEntries(serials.map((serial) => [serial, inputs.items.get(serial)!.model])),
    unusable: serials.filter((serial) => availability.get(serial)!.reason !== null),
    loads: loads
      .map((load) => ({
        id: load.id,
        boxes: load.positions
          .filter((position) => !leaveOut.has(`${load.id}/${position}`))
          .map((position) => load.hang.boxes[position - 1]!)
          .map((box) => (box.serial === undefined ? { model: box.model } : { serial: box.serial })),
      }))
      .filter((load) => load.boxes.length > 0),
  };
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
