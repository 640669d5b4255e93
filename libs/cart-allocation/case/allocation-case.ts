import { z } from 'zod';
import { type BadInput, type Result, ok, readInput, refuse } from '#kernel';

const name = z.string().min(1).max(300);

export const allocationCaseSchema = z.strictObject({
  carts: z
    .array(
      z.strictObject({
        id: name,
        capacity: z.int().min(0).max(1000),
        stack: z.array(name).max(1000),
        carries: z.array(name).max(200).optional(),
        /** Out of use: boxes can be lifted off it, nothing is set on it, it takes no load; what stands on it may be more than it may carry. */
        givesOnly: z.boolean().optional(),
      }),
    )
    .max(20_000),
  loose: z.array(name).max(200_000).default([]),
  boxes: z.record(name, name),
  unusable: z.array(name).max(200_000).default([]),
  /** Serial -> model of boxes that loads pin and that are not on this floor: short, by name. */
  absent: z.record(name, name).default({}),
  loads: z
    .array(
      z.strictObject({
        id: name,
        /** Carts that are not to have it, for asking what another would cost. */
        notOn: z.array(name).max(200).optional(),
        boxes: z
          .array(z.union([z.strictObject({ model: name }), z.strictObject({ serial: name })]))
          .min(1)
          .max(1000),
      }),
    )
    .max(20_000),
});

/** What a case is made from; stacks and loads top first. */
export type AllocationInput = z.input<typeof allocationCaseSchema>;

declare const wasRead: unique symbol;

/** A case whose every part agrees with the others: only `readAllocationCase` and `makeAllocationCase` give one. */
export type AllocationCase = DeepReadonly<z.output<typeof allocationCaseSchema>> & { readonly [wasRead]: true };

type DeepReadonly<T> = T extends (infer E)[]
  ? readonly DeepReadonly<E>[]
  : T extends object
    ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
    : T;

/** Reads a case. Malformed: an unknown or twice-used serial, a stack above its capacity, an empty load, an id twice. */
export function readAllocationCase(input: unknown): Result<AllocationCase, readonly BadInput[]> {
  const read = readInput(allocationCaseSchema, input);
  if (!read.ok) return read;
  const faults = faultsIn(read.value);
  return faults.length === 0 ? ok(read.value as unknown as AllocationCase) : refuse(faults);
}

/** The same reader for callers whose data have a type; `absent` names the models of pinned boxes that may not be on the floor. */
export const makeAllocationCase = (input: DeepReadonly<AllocationInput>): Result<AllocationCase, readonly BadInput[]> =>
  readAllocationCase(input);

type Unchecked = z.output<typeof allocationCaseSchema>;
type Add = (field: string, value: unknown, wanted: string) => void;

function faultsIn(input: Unchecked): BadInput[] {
  const faults: BadInput[] = [];
  const add: Add = (field, value, wanted) => {
    if (faults.length < 200) faults.push({ field, value, wanted });
  };
  checkPlaces(input, add);
  checkLoads(input, add);
  return faults;
}

/** Every box in one place, on a cart that holds and carries it. */
function checkPlaces({ carts, loose, boxes, unusable, absent }: Unchecked, add: Add): void {
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
  carts.forEach(({ id, capacity, stack, carries, givesOnly }, index) => {
    if (cartIds.has(id) || id === 'floor') add(`carts[${index}].id`, id, 'each cart id only once, and not "floor"');
    cartIds.add(id);
    if (!givesOnly && stack.length > capacity)
      add(`carts[${index}].stack`, `a list of ${stack.length}`, `at most ${capacity} boxes, the capacity of this cart`);
    stack.forEach((serial, slot) => {
      put(`carts[${index}].stack[${slot}]`, serial);
      const model = Object.hasOwn(boxes, serial) ? boxes[serial] : undefined;
      if (!givesOnly && carries && model !== undefined && !carries.includes(model))
        add(`carts[${index}].stack[${slot}]`, serial, `a box that this cart may carry: ${carries.join(', ') || 'none'}`);
    });
  });
  loose.forEach((serial, index) => put(`loose[${index}]`, serial));
  for (const serial of Object.keys(boxes))
    if (!placed.has(serial)) add(`boxes.${serial}`, serial, 'a place for each box: on a cart or loose');
  unusable.forEach((serial, index) => known(`unusable[${index}]`, serial));
  for (const serial of Object.keys(absent))
    if (Object.hasOwn(boxes, serial)) add(`absent.${serial}`, serial, 'a box that is not on this floor; this one is listed in boxes');
}

/** Every load once; every pinned serial on this floor or named as absent. */
function checkLoads({ carts, boxes, absent, loads }: Unchecked, add: Add): void {
  const cartIds = new Set(carts.map((cart) => cart.id));
  const loadIds = new Set<string>();
  loads.forEach((load, index) => {
    if (loadIds.has(load.id)) add(`loads[${index}].id`, load.id, 'each load id only once');
    loadIds.add(load.id);
    load.notOn?.forEach((cart, at) => {
      if (!cartIds.has(cart)) add(`loads[${index}].notOn[${at}]`, cart, 'the id of a cart of this case');
    });
    load.boxes.forEach((box, slot) => {
      if ('serial' in box && !Object.hasOwn(boxes, box.serial) && !Object.hasOwn(absent, box.serial))
        add(`loads[${index}].boxes[${slot}].serial`, box.serial, 'a serial listed in boxes');
    });
  });
}
