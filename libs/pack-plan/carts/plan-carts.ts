import { hangName, splaySetAtPosition } from '#tour-file';
import { type AllocationCase, type BoxShortage, type CheckedAllocation, solveAllocation } from '#cart-allocation';
import type { CartException, ShortageFact } from '#trade';
import { type Words, tell } from '#words';
import type { CartLoad, CartsResult, PlannedBox, Said, SolveLimits, Stack } from '../contract/index.js';
import { type PlanInputs, framesOf } from '../inputs/index.js';
import { type WantedLoad, allocationCase, cartModel, wantedLoads } from './allocation-case.js';
import { describeMoves } from './box-moves.js';
import { shortagesOf } from './shortage.js';
import { preferencesOf, wishesOf } from './wishes.js';

/** The cart loads of the show, the boxes and carts found for them, and the shortest list of box moves. */
export function planCarts(inputs: PlanInputs, limits: SolveLimits): CartsResult {
  const loads = wantedLoads(inputs);
  const missing = new Set<string>();
  let problem = allocationCase(inputs, loads, missing);
  const withWishes = { ...limits, prefer: preferencesOf(inputs, loads) };
  let answer = solveAllocation(problem, withWishes);
  const short = answer.short ?? [];
  const shortages = [...shortagesOf(inputs, answer)];
  const cartless = new Set<string>();
  // What cannot be served is left out place by place, from the bottom of the last hang, so that the rest is still planned.
  while (answer.status === 'infeasible' && problem.loads.length > 0) {
    if (answer.cartsShort && !shortages.some(isOfCarts)) shortages.push(...shortagesOf(inputs, answer).filter(isOfCarts));
    leaveOutWhatIsShort(loads, answer, missing, cartless);
    problem = allocationCase(inputs, loads, missing);
    answer = problem.loads.length > 0 ? solveAllocation(problem, withWishes) : answer;
  }
  return describe(inputs, loads, problem, answer, { missing, cartless, short, shortages });
}

const isOfCarts = ({ code }: ShortageFact): boolean =>
  code === 'too-few-carts' || code === 'no-cart-may-carry' || code === 'carts-not-free';

/** What a design had to do without: places ("load id/position"), loads that no cart is left for, and why. */
interface Lack {
  readonly missing: ReadonlySet<string>;
  readonly cartless: ReadonlySet<string>;
  readonly short: readonly BoxShortage[];
  readonly shortages: readonly ShortageFact[];
}

function leaveOutWhatIsShort(loads: readonly WantedLoad[], answer: CheckedAllocation, missing: Set<string>, cartless: Set<string>): void {
  const before = missing.size;
  const lastFirst = [...loads].reverse();
  for (const { model, missing: count, serial } of answer.short ?? []) {
    const places = lastFirst.flatMap((load) =>
      [...load.positions]
        .reverse()
        .filter((position) => placeIsOf(load, position, model, serial) && !missing.has(`${load.id}/${position}`))
        .map((position) => `${load.id}/${position}`),
    );
    for (const place of places.slice(0, count)) missing.add(place);
  }
  if (missing.size > before) return;
  const isLeft = (load: WantedLoad) => load.positions.some((position) => !missing.has(`${load.id}/${position}`));
  const last = loads.find((load) => load.id === answer.cartsShort?.load && isLeft(load)) ?? lastFirst.find(isLeft);
  if (last && answer.cartsShort) cartless.add(last.id);
  for (const position of last?.positions ?? []) missing.add(`${last!.id}/${position}`);
}

/** A place that wants this pinned serial, or where none is named any box of the model. */
function placeIsOf(load: WantedLoad, position: number, model: string, serial: string | undefined): boolean {
  const box = load.hang.boxes[position - 1]!;
  return serial === undefined ? box.model === model && box.serial === undefined : box.serial === serial;
}

function describe(
  inputs: PlanInputs,
  loads: readonly WantedLoad[],
  problem: AllocationCase,
  answer: CheckedAllocation,
  lack: Lack,
): CartsResult {
  const { missing, short, shortages } = lack;
  const solved = answer.status !== 'infeasible';
  const complete = missing.size === 0 && solved;
  const cartLoads = loads.map((load) => cartLoad(inputs, load, answer, lack));
  return {
    status: complete ? answer.status : 'infeasible',
    boxMoves: solved ? answer.boxMoves : 0,
    bound: solved ? answer.bound : 0,
    stoppedBy: answer.stoppedBy,
    ...(answer.mismatch.length > 0 ? { mismatch: answer.mismatch } : {}),
    loads: cartLoads,
    wishes: wishesOf(inputs, cartLoads, answer),
    moves: solved ? describeMoves(problem, answer, loads, inputs.words) : [],
    floorBefore: floor(
      inputs,
      problem,
      problem.carts.map((each) => [each.id, each.stack] as const),
      problem.loose,
    ),
    floorAfter: floorAfter(inputs, problem, answer),
    short,
    reason: shortages.length === 0 ? null : shortages.map((each) => tell(inputs.words.shortages, each)).join(' '),
    fact: shortages,
    leftOut: inputs.file.items
      .filter((item) => item.kind === 'box')
      .flatMap((item) => {
        const fact = inputs.availability.get(item.id)!.reason;
        return fact === null ? [] : [{ serial: item.id, model: item.model, reason: tell(inputs.words.against, fact), fact }];
      }),
  };
}

function cartLoad(inputs: PlanInputs, load: WantedLoad, answer: CheckedAllocation, { missing, cartless }: Lack): CartLoad {
  const found = answer.assignments?.find((each) => each.load === load.id);
  const cart = found ? inputs.items.get(found.cart)! : undefined;
  const model = cart ? cartModel(inputs, cart.model) : undefined;
  const system = inputs.file.systems.find(
    (each) => each.id === inputs.file.catalogue.grids.find((grid) => grid.model === load.hang.grid)?.system,
  );
  const serials = [...(found?.boxes ?? [])];
  const boxes = load.positions.map((position, index): PlannedBox => {
    const { model: boxModel, splayDeg } = load.hang.boxes[position - 1]!;
    const splaySet =
      position === 1 ? 'to the grid' : index === 0 && system?.jointBetweenCarts !== 'set in the cart' ? 'at the point' : 'in the cart';
    const serial = missing.has(`${load.id}/${position}`) ? null : (serials.shift() ?? null);
    return {
      slot: index + 1,
      position,
      model: boxModel,
      serial,
      splayDeg,
      splaySet,
      splaySetAtPosition: splaySetAtPosition(system, position),
    };
  });
  const massOf = (name: string) => inputs.file.catalogue.boxes.find((each) => each.model === name)?.massKg ?? 0;
  const frames = !found
    ? []
    : framesOf(inputs, load.hang).flatMap(({ model: { model: name, massKg, onCartMm }, position }) =>
        onCartMm !== undefined && position !== null && load.positions.includes(position)
          ? [{ model: name, position, massKg, onCartMm }]
          : [],
      );
  return {
    id: load.id,
    name: load.name,
    hang: load.hang.id,
    hangName: hangName(load.hang),
    number: load.number,
    of: load.of,
    cart: found?.cart ?? null,
    cartModel: model?.model ?? null,
    capacity: model?.capacity ?? boxes.length,
    boxes,
    ...(frames.length > 0 ? { frames } : {}),
    massKg:
      (model?.massKg ?? 0) +
      boxes.reduce((sum, each) => sum + (each.serial === null ? 0 : massOf(each.model)), 0) +
      frames.reduce((sum, each) => sum + each.massKg, 0),
    exceptions: cartless.has(load.id)
      ? [{ fact: noCart, sentence: tell(inputs.words.exceptions, noCart) }]
      : exceptionsOf(inputs.words, boxes, model?.capacity),
  };
}

const noCart: CartException = { code: 'no-cart' };

function exceptionsOf(words: Words, boxes: readonly PlannedBox[], capacity: number | undefined): Said<CartException>[] {
  const models = [...new Set(boxes.map((each) => each.model))];
  const facts: CartException[] = [
    ...(capacity !== undefined && boxes.length < capacity ? [{ code: 'part-load' as const, boxes: boxes.length, capacity }] : []),
    ...(models.length > 1 && boxes.some((each) => each.serial !== null) ? [{ code: 'mixed-models' as const, models }] : []),
    ...boxes.filter((each) => each.serial === null).map(({ slot, model }) => ({ code: 'no-box' as const, slot, model })),
  ];
  return facts.map((fact) => ({ fact, sentence: tell(words.exceptions, fact) }));
}

function floorAfter(inputs: PlanInputs, problem: AllocationCase, answer: CheckedAllocation): CartsResult['floorAfter'] {
  const stacks = new Map(problem.carts.map((each) => [each.id, [...each.stack]]));
  const loose = new Set(problem.loose);
  for (const { box, from, to } of answer.status === 'infeasible' ? [] : answer.moves) {
    if (from === 'floor') loose.delete(box);
    else stacks.get(from)!.shift();
    if (to === 'floor') loose.add(box);
    else stacks.get(to)!.unshift(box);
  }
  return floor(inputs, problem, [...stacks], [...loose]);
}

function floor(
  { items }: PlanInputs,
  problem: AllocationCase,
  stacks: readonly (readonly [string, readonly string[]])[],
  loose: readonly string[],
): { carts: Stack[]; loose: string[] } {
  const carts = new Map(problem.carts.map((each) => [each.id, each]));
  const stackOf = (cart: string, boxes: readonly string[]): Stack => {
    const { capacity, givesOnly, stack } = carts.get(cart)!;
    const beneath = (items.get(cart)?.stack ?? []).slice(stack.length);
    return { cart, capacity, boxes: [...boxes], ...(givesOnly ? { givesOnly } : {}), ...(beneath.length > 0 ? { beneath } : {}) };
  };
  return { carts: stacks.map(([cart, boxes]) => stackOf(cart, boxes)), loose: [...loose] };
}
