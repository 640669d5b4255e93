import type { EntityManager } from 'typeorm';
import type { BadInput } from '#kernel';
import type { CartModel } from '#tour-file';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { Author } from '../../platform/sign-in/person.js';
import { eventOfPlace, writeStack } from './kit.writer.js';
import { ItemRow, ModelRow } from './rows.js';

/** Puts on file how a cart stands, top first, as somebody read it; the floor takes what stood there before. */
export async function readStack(manager: EntityManager, cartId: string, serials: readonly string[], who: Author, at: Date): Promise<void> {
  const cart = await manager.getRepository(ItemRow).findOneBy({ id: cartId });
  if (!cart) throw new NotFoundError(`The cart ${cartId.slice(0, 80)}`);
  const faults = cart.kind === 'cart' ? await faultsOf(manager, cart, serials) : [{ field: 'cart', value: cart.id, wanted: 'a cart' }];
  if (faults.length > 0) throw new BadInputError(faults);
  const moved = await writeStack(manager, cart.id, serials);
  await recordEvents(manager, who, at, [
    { what: 'stacked', itemId: cart.id, sentence: `Holds ${serials.join(', ') || 'nothing'}, top first.` },
    ...moved.map(eventOfPlace),
  ]);
}

/** Boxes on file, each once, within the cart's capacity, of models that it may carry. */
async function faultsOf(manager: EntityManager, cart: ItemRow, serials: readonly string[]): Promise<BadInput[]> {
  const { data } = await manager.getRepository(ModelRow).findOneByOrFail({ kind: 'carts', model: cart.model });
  const { capacity, carries } = data as CartModel;
  const faults: BadInput[] = [];
  if (serials.length > capacity)
    faults.push({ field: 'serials', value: serials.length, wanted: `at most ${capacity} boxes on ${cart.id}` });
  for (const [index, serial] of serials.entries()) {
    const field = `serials[${index}]`;
    const box = await manager.getRepository(ItemRow).findOneBy({ id: serial, kind: 'box' });
    if (!box) faults.push({ field, value: serial, wanted: 'the serial of a box on file' });
    if (serials.indexOf(serial) !== index) faults.push({ field, value: serial, wanted: 'each serial once' });
    if (box && carries && !carries.includes(box.model))
      faults.push({ field, value: serial, wanted: `a box that ${cart.id} may carry: ${carries.join(', ')}` });
  }
  return faults;
}
