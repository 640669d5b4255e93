import { z } from 'zod';
import { type BadInput, type Result, readInput, refuse } from '#kernel';

const name = z.string().min(1).max(120);

export const allocationCaseSchema = z.strictObject({
  carts: z
    .array(
      z.strictObject({
        id: name,
        capacity: z.int().min(0).max(100),
        stack: z.array(name).max(100),
        carries: z.array(name).max(200).optional(),
      }),
    )
    .max(20_000),
  loose: z.array(name).max(200_000).default([]),
  boxes: z.record(name, name),
  unusable: z.array(name).max(200_000).default([]),
  loads: z
    .array(
      z.strictObject({
        id: name,
        boxes: z
          .array(z.union([z.strictObject({ model: name }), z.strictObject({ serial: name })]))
          .min(1)
          .max(100),
      }),
    )
    .max(20_000),
});

/** Stacks and loads top first. */
export type AllocationCase = z.output<typeof allocationCaseSchema>;

/** Reads a case. Malformed: an unknown or twice-used serial, a stack above its capacity, an empty load, an id twice. */
export function readAllocationCase(input: unknown): Result<AllocationCase, readonly BadInput[]> {
  const read = readInput(allocationCaseSchema, input);
  if (!read.ok) return read;
  const faults = faultsIn(read.value);
  return faults.length === 0 ? read : refuse(faults);
}

function faultsIn({ carts, loose, boxes, unusable, loads }: AllocationCase): BadInput[] {
  const faults: BadInput[] = [];
  const add = (field: string, value: unknown, wanted: string) => {
    if (faults.length < 200) faults.push({ field, value, wanted });
  };
  const placed = new Map<string, string>();
  const known = (field: string, serial: string) => {
    if (!Object.hasOwn(boxes, serial)) add(field, serial, 'a serial listed in boxes');
  };
  const put = (field: string, serial: string) => {
    known(field, serial);
    if (placed.has(serial)) add(field, serial, `one place for each serial; it also stands at ${placed.get(serial)}`);
    placed.set(serial, field);
  };
  const cartIds = new Set<string>();
  carts.forEach((cart, index) => {
    if (cartIds.has(cart.id) || cart.id === 'floor') add(`carts[${index}].id`, cart.id, 'each cart id only once, and not "floor"');
    cartIds.add(cart.id);
    if (cart.stack.length > cart.capacity)
      add(`carts[${index}].stack`, `a list of ${cart.stack.length}`, `at most ${cart.capacity} boxes, the capacity of this cart`);
    cart.stack.forEach((serial, slot) => {
      put(`carts[${index}].stack[${slot}]`, serial);
      const model = boxes[serial];
      if (cart.carries && model !== undefined && !cart.carries.includes(model))
        add(`carts[${index}].stack[${slot}]`, serial, `a box that this cart may carry: ${cart.carries.join(', ') || 'none'}`);
    });
  });
  loose.forEach((serial, index) => put(`loose[${index}]`, serial));
  for (const serial of Object.keys(boxes))
    if (!placed.has(serial)) add(`boxes.${serial}`, serial, 'a place for each box: on a cart or loose');
  unusable.forEach((serial, index) => known(`unusable[${index}]`, serial));
  const loadIds = new Set<string>();
  loads.forEach((load, index) => {
    if (loadIds.has(load.id)) add(`loads[${index}].id`, load.id, 'each load id only once');
    loadIds.add(load.id);
    load.boxes.forEach((box, slot) => {
      if ('serial' in box) known(`loads[${index}].boxes[${slot}].serial`, box.serial);
    });
  });
  return faults;
}
