import type { Catalogue, ItemKind, Kit, TourFile } from '../shapes/index.js';
import type { FaultList } from './fault-list.js';

const cataloguePart: Record<ItemKind, keyof Catalogue> = {
  box: 'boxes',
  cart: 'carts',
  grid: 'grids',
  hoist: 'hoists',
  shackle: 'shackles',
  sling: 'slings',
  pin: 'pins',
  loom: 'looms',
  case: 'cases',
  truck: 'trucks',
  frame: 'frames',
  cell: 'cells',
  control: 'controls',
  aid: 'aids',
};

/** The models of a kind of item, by name. */
export function modelsOfKind(catalogue: Catalogue, kind: ItemKind): ReadonlyMap<string, { readonly model: string }> {
  return new Map((catalogue[cataloguePart[kind]] as { model: string }[]).map((each) => [each.model, each]));
}

const batchKinds: readonly ItemKind[] = ['pin', 'shackle', 'sling', 'loom', 'frame', 'cell', 'control', 'aid'];

/** Every serial once and in one place, every model on file, dates that can be. */
export function checkItems(file: Kit, faults: FaultList): void {
  const models = Object.fromEntries((Object.keys(cataloguePart) as ItemKind[]).map((kind) => [kind, modelsOfKind(file.catalogue, kind)]));
  const byId = new Map(file.items.map((each) => [each.id, each]));
  const seen = new Set<string>();
  const standing = new Map<string, string>();

  file.items.forEach((item, index) => {
    const field = `items[${index}]`;
    faults.twice(`${field}.id`, item.id, seen, 'each serial');
    faults.unknown(`${field}.model`, item.model, models[item.kind]!, `a ${item.kind} model`);
    if (item.count !== undefined && !batchKinds.includes(item.kind))
      faults.add(`${field}.count`, item.count, `no count: a ${item.kind} has a serial of its own`);
    if (item.kind === 'pin' && item.count === undefined) faults.add(`${field}.count`, null, 'how many pins the batch holds');
    if (item.hire) faults.range(`${field}.hire`, item.hire.from, item.hire.to);
    if (item.state === 'quarantined' && !item.reason) faults.add(`${field}.reason`, null, 'why it is quarantined');
    if (item.in !== undefined) {
      const holder = byId.get(item.in);
      if (!holder) faults.unknown(`${field}.in`, item.in, byId, 'a case or truck');
      else if (holder.kind !== 'case' && holder.kind !== 'truck')
        faults.add(`${field}.in`, item.in, `a case or a truck; ${item.in} is a ${holder.kind}`);
    }
    if (item.stack === undefined) return;
    if (item.kind !== 'cart') return faults.add(`${field}.stack`, `a list of ${item.stack.length}`, 'a stack only on a cart');
    const cart = file.catalogue.carts.find((each) => each.model === item.model);
    if (cart && item.stack.length > cart.capacity)
      faults.add(`${field}.stack`, `a list of ${item.stack.length}`, `at most ${cart.capacity} boxes on this cart`);
    item.stack.forEach((serial, slot) => {
      const at = `${field}.stack[${slot}]`;
      const box = byId.get(serial);
      if (!box) faults.unknown(at, serial, byId, 'the serial of a box');
      else if (box.kind !== 'box') faults.add(at, serial, `the serial of a box; ${serial} is a ${box.kind}`);
      else if (cart?.carries && !cart.carries.includes(box.model))
        faults.add(at, serial, `a box of ${cart.carries.join(' or ')}; ${serial} is ${box.model}`);
      const elsewhere = standing.get(serial);
      if (elsewhere !== undefined) faults.add(at, serial, `one place for each box; ${serial} also stands on ${elsewhere}`);
      standing.set(serial, item.id);
    });
  });
}

/** Promises to other tours name items on file and days in order. */
export function checkBookings(file: TourFile, faults: FaultList): void {
  const byId = new Map(file.items.map((each) => [each.id, each]));
  file.bookings.forEach((booking, index) => {
    faults.unknown(`bookings[${index}].item`, booking.item, byId, 'an item');
    faults.range(`bookings[${index}]`, booking.from, booking.to);
  });
}
