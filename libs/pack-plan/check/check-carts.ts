import type { CartLoad } from '../contract/index.js';
import type { Checking } from './checking.js';

/** Every position of every hang rides once, in order, as the model or the very box that the design wants; no box and no cart serves twice. */
export function checkCarts(checking: Checking): void {
  const { hangs, plan, wrong } = checking;
  for (const hang of hangs) {
    const positions = plan.carts.loads.filter((each) => each.hang === hang.id).flatMap((load) => load.boxes.map((box) => box.position));
    if (positions.length !== hang.boxes.length || positions.some((position, index) => position !== index + 1))
      wrong('carts', hang.id, `its loads hold the positions ${positions.join(', ')} of ${hang.boxes.length}`);
  }
  const served = new Map<string, string>();
  const once = (id: string, load: string) => {
    if (served.has(id)) wrong('carts', id, `it serves ${served.get(id)} and ${load}`);
    served.set(id, load);
  };
  for (const load of plan.carts.loads) {
    if (load.cart !== null) once(load.cart, load.id);
    for (const box of load.boxes) if (box.serial !== null) once(box.serial, load.id);
    checkBoxes(checking, load);
    checkCart(checking, load);
  }
  const places = plan.carts.loads.flatMap((each) => each.boxes);
  const empty = places.filter((each) => each.serial === null).length;
  if (empty > 0 !== (plan.carts.status === 'infeasible') && places.length > 0)
    wrong('carts', plan.show.id, `${plan.carts.status}, with ${empty} of ${places.length} places empty`);
  if (empty > 0 && !plan.findings.some((each) => each.weight === 'stop' && each.section === 'carts'))
    wrong('carts', plan.show.id, `${empty} places are empty and nothing says stop`);
}

function checkBoxes({ hangs, items, file, wrong }: Checking, load: CartLoad): void {
  const hang = hangs.find((each) => each.id === load.hang);
  for (const box of load.boxes) {
    const wanted = hang?.boxes[box.position - 1];
    if (!wanted || wanted.model !== box.model || wanted.splayDeg !== box.splayDeg)
      wrong('carts', load.id, `position ${box.position} is not as designed`);
    if (box.serial === null) continue;
    const item = items.get(box.serial);
    if (!item || item.kind !== 'box' || item.model !== box.model) wrong('carts', box.serial, `it is no ${box.model} on file`);
    else if (item.state !== 'in service') wrong('carts', box.serial, `it is ${item.state}`);
    else if (item.unaccepted) wrong('carts', box.serial, 'it is not accepted');
    else if (item.depot !== file.tour.depot) wrong('carts', box.serial, `it is at ${item.depot}`);
    if (wanted?.serial !== undefined && wanted.serial !== box.serial)
      wrong('carts', load.id, `${wanted.serial} is wanted, not ${box.serial}`);
    checkFree(box.serial, load.id, { items, file, wrong });
  }
}

function checkCart({ items, file, wrong }: Checking, load: CartLoad): void {
  if (load.cart === null) return;
  const item = items.get(load.cart);
  const model = file.catalogue.carts.find((each) => each.model === item?.model);
  if (!item || item.kind !== 'cart' || !model) return wrong('carts', load.cart, 'it is no cart on file');
  const held = load.boxes.filter((each) => each.serial !== null);
  if (item.state !== 'in service') wrong('carts', load.cart, `it is ${item.state}`);
  if (item.unaccepted) wrong('carts', load.cart, 'it is not accepted');
  if (held.length > model.capacity) wrong('carts', load.cart, `it holds ${held.length} of ${model.capacity}`);
  for (const box of held)
    if (model.carries && !model.carries.includes(box.model)) wrong('carts', load.cart, `it may not carry ${box.model}`);
  checkFree(load.cart, load.id, { items, file, wrong });
}

/** Promised to nobody else on any day of the tour, and hired for all of it. */
function checkFree(id: string, where: string, { items, file, wrong }: Pick<Checking, 'items' | 'file' | 'wrong'>): void {
  const { prepFrom, returnTo } = file.tour;
  const other = file.bookings.find(
    (each) => each.item === id && each.count === undefined && each.tour !== file.tour.name && each.from <= returnTo && each.to >= prepFrom,
  );
  if (other) wrong('carts', id, `it is promised to ${other.tour} and planned in ${where}`);
  const hire = items.get(id)?.hire;
  if (hire && (hire.from > prepFrom || hire.to < returnTo)) wrong('carts', id, `it is hired from ${hire.from} to ${hire.to} only`);
}
