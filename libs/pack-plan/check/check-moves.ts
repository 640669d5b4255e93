import { holdsFor } from '#tour-file';
import type { Checking } from './checking.js';

/** Whether another tour is promised the item on a day of this one. */
function isHeld({ bookings, tour }: Checking['file'], item: string): boolean {
  return bookings.some(
    (each) =>
      each.item === item && each.count === undefined && !holdsFor(each, tour) && each.from <= tour.returnTo && each.to >= tour.prepFrom,
  );
}

/** Carries the moves out one by one on the floor of the register; at the end every load stands whole on its cart. */
export function checkMoves({ file, items, plan, wrong }: Checking): void {
  const { carts } = plan;
  const stacks = new Map(file.items.filter((each) => each.kind === 'cart').map((each) => [each.id, [...(each.stack ?? [])]]));
  for (const { cart, boxes, givesOnly } of carts.floorBefore.carts) {
    const stack = stacks.get(cart) ?? [];
    const seen = boxes.length;
    // Of a cart that another tour holds, what stands from the first box of that tour down is out of reach.
    const isTop = givesOnly === true && seen < stack.length && isHeld(file, cart) && isHeld(file, stack[seen]!);
    if (stack.slice(0, isTop ? seen : stack.length).join('\n') !== boxes.join('\n'))
      wrong('box moves', cart, 'it does not stand as the register says');
  }
  const standing = new Set([...stacks.values()].flat());
  const onFloor = new Set(file.items.filter((each) => each.kind === 'box' && !standing.has(each.id)).map((each) => each.id));
  const capacity = (cart: string) => file.catalogue.carts.find((each) => each.model === items.get(cart)?.model)?.capacity ?? 0;
  for (const { number, box, from, to } of carts.moves) {
    if (from === 'floor' ? !onFloor.delete(box) : stacks.get(from)?.shift() !== box)
      return wrong('box moves', `move ${number}`, `${box} is not on top of ${from}`);
    if (to === 'floor') onFloor.add(box);
    else if (!stacks.has(to) || stacks.get(to)!.unshift(box) > capacity(to))
      return wrong('box moves', `move ${number}`, `${to} has no room`);
  }
  for (const load of carts.loads) {
    const wanted = load.boxes.flatMap((each) => each.serial ?? []);
    if (load.cart === null) {
      if (wanted.length > 0) wrong('box moves', load.id, 'it has boxes and no cart');
      continue;
    }
    const held = stacks.get(load.cart) ?? [];
    if (held.join('\n') !== wanted.join('\n')) wrong('box moves', load.id, `${load.cart} holds ${held.join(', ') || 'nothing'} in the end`);
  }
  if (carts.boxMoves !== carts.moves.length)
    wrong('box moves', plan.show.id, `${carts.boxMoves} moves are said, ${carts.moves.length} listed`);
  if (carts.bound > carts.boxMoves) wrong('box moves', plan.show.id, `the bound ${carts.bound} is above ${carts.boxMoves} moves`);
  if (carts.status === 'optimal' && carts.bound !== carts.boxMoves)
    wrong('box moves', plan.show.id, 'called fewest without a bound that meets it');
}
