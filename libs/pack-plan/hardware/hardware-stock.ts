import type { Lot } from '#hardware-count';
import { type Item, holdsFor } from '#tour-file';
import type { ReasonAgainst } from '#trade';
import { tell } from '#words';
import type { CartsResult } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { cartPart } from './hardware-pieces.js';

const loosely: readonly Item['kind'][] = ['grid', 'hoist', 'shackle', 'sling', 'pin', 'loom', 'frame', 'cell', 'control', 'aid'];

/** Batches and serials that may be used in this show, with what other tours hold of a batch; the poles and lids of usable carts. */
export function hardwareLots(inputs: PlanInputs): Lot[] {
  const { file, availability } = inputs;
  const { tour, bookings } = file;
  return [...availability.values()].flatMap(({ item, reason }): Lot[] => {
    if (reason !== null) return [];
    if (item.kind === 'cart') {
      const { poles, lids } = modelOf(file.catalogue.carts, item.model);
      return (['pole', 'lid'] as const).map((part) => ({
        id: item.id,
        key: cartPart(item.model, part),
        count: part === 'pole' ? poles : lids,
        trunk: null,
        promises: [],
      }));
    }
    if (!loosely.includes(item.kind)) return [];
    const promises = bookings
      .filter((each) => each.item === item.id && each.count !== undefined && !holdsFor(each, tour))
      .filter((each) => each.from <= tour.returnTo && each.to >= tour.prepFrom)
      .map((each) => ({
        from: each.from < tour.prepFrom ? tour.prepFrom : each.from,
        to: each.to > tour.returnTo ? tour.returnTo : each.to,
        count: each.count!,
      }));
    return [{ id: item.id, key: item.model, count: item.count ?? 1, trunk: item.in ?? null, promises }];
  });
}

/** Batches and serials of a model that may not be used, with the reason. */
export function outOfUse(inputs: PlanInputs, model: string): { lot: string; count: number; reason: string; fact: ReasonAgainst }[] {
  return [...inputs.availability.values()].flatMap(({ item, reason: fact }) =>
    fact !== null && item.model === model && loosely.includes(item.kind)
      ? [{ lot: item.id, count: item.count ?? 1, reason: tell(inputs.words.against, fact), fact }]
      : [],
  );
}

/** Pins that ride with each box and cart of the house at this depot, by pin model; those of boxes and carts that do not travel kept apart. */
export function pinsKeptWithBoxes(inputs: PlanInputs, carts: CartsResult): { all: Map<string, number>; atHome: Map<string, number> } {
  const { file } = inputs;
  const travelling = new Set(carts.loads.flatMap((load) => [load.cart, ...load.boxes.map((box) => box.serial)]));
  const [all, atHome] = [new Map<string, number>(), new Map<string, number>()];
  const add = (to: Map<string, number>, pin: string, count: number) => to.set(pin, (to.get(pin) ?? 0) + count);
  for (const item of file.items) {
    if (item.depot !== file.tour.depot || item.state === 'retired' || item.hire) continue;
    for (const { pin, count } of pinsOf(inputs, item)) {
      add(all, pin, count);
      if (!travelling.has(item.id)) add(atHome, pin, count);
    }
  }
  return { all, atHome };
}

function pinsOf(inputs: PlanInputs, item: Item): { readonly pin: string; readonly count: number }[] {
  const { catalogue } = inputs.file;
  if (item.kind === 'box') return modelOf(catalogue.boxes, item.model).pins.filter((each) => each.stowed !== 'trunk');
  if (item.kind === 'frame')
    return modelOf(catalogue.frames, item.model)
      .pins.filter((each) => each.stowed !== 'trunk')
      .map(({ pin, count }) => ({ pin, count: count * (item.count ?? 1) }));
  const base = item.kind === 'cart' ? modelOf(catalogue.carts, item.model).basePins : undefined;
  return base ? [base] : [];
}

/** What is on file as kept with boxes and carts, in no case, whatever its state. */
export function filedWithBoxes(inputs: PlanInputs, pin: string): number | null {
  const lots = inputs.file.items.filter(
    (item) =>
      item.model === pin &&
      item.count !== undefined &&
      item.in === undefined &&
      item.depot === inputs.file.tour.depot &&
      item.state !== 'retired',
  );
  return lots.length === 0 ? null : lots.reduce((sum, item) => sum + item.count!, 0);
}
