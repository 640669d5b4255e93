import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type BadInput, ok } from '#kernel';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { PlanReader } from '../plan/stored/plan.reader.js';
import { type FloorItem, findFloorItem, stackOn } from '../register/floor-item.reader.js';
import { readStack } from '../register/stack.writer.js';
import { keepFloorRecords } from './floor-record.writer.js';

const mostItems = 200;

/** What comes home: carts as they stand, and everything that rides on none. The floor of the register follows. */
@Injectable()
export class ReturnService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly plans: PlanReader,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** A cart as it came back, top first. Each box on it is back with it. */
  async cart(planId: string, cartId: string, serials: readonly string[], who: SignedIn): Promise<void> {
    await this.unitOfWork.run<void>(async (manager) => {
      const of = await this.plans.headInForce(manager, planId);
      const at = this.clock.now();
      await readStack(manager, cartId, serials, who, at);
      await keepFloorRecords(
        manager,
        of,
        [
          { itemId: cartId, kind: 'returned', data: { stands: serials } },
          ...serials.map((itemId, index) => ({ itemId, kind: 'returned' as const, data: { on: cartId, slot: index + 1 } })),
        ],
        at,
        who,
      );
      const { tourId, showId } = of;
      await recordEvents(manager, who, at, [
        { what: 'returned', itemId: cartId, tourId, showId, sentence: `Came back with ${serials.join(', ') || 'nothing on it'}.` },
        ...serials.map((itemId, index) => ({
          ...{ what: 'returned', itemId, tourId, showId, place: `${cartId} ${index + 1}` },
          sentence: `Came back on ${cartId}, slot ${index + 1}.`,
        })),
      ]);
      return ok(undefined);
    });
  }

  /** Things that ride on no cart, or came back without one: a box among them stands on the floor from now on. */
  async items(planId: string, ids: readonly string[], who: SignedIn): Promise<void> {
    await this.unitOfWork.run<void>(async (manager) => {
      const of = await this.plans.headInForce(manager, planId);
      if (ids.length === 0 || ids.length > mostItems)
        throw new BadInputError([{ field: 'items', value: `a list of ${ids.length}`, wanted: `1 to ${mostItems} items` }]);
      const found = await this.known(manager, ids);
      const at = this.clock.now();
      const lifted = found.filter((each) => each.stackCart !== null);
      for (const { id, stackCart } of lifted) await liftOff(manager, id, stackCart ?? '', who, at);
      await keepFloorRecords(
        manager,
        of,
        found.map(({ id }) => ({ itemId: id, kind: 'returned', data: {} })),
        at,
        who,
      );
      const { tourId, showId } = of;
      await recordEvents(
        manager,
        who,
        at,
        found.map(({ id }) => ({ what: 'returned', itemId: id, tourId, showId, sentence: 'Came back.' })),
      );
      return ok(undefined);
    });
  }

  private async known(manager: EntityManager, ids: readonly string[]): Promise<FloorItem[]> {
    const faults: BadInput[] = [];
    const found: FloorItem[] = [];
    for (const [index, id] of ids.entries()) {
      const item = await findFloorItem(manager, id);
      if (item && item.count === null && item.kind !== 'cart' && ids.indexOf(id) === index) found.push(item);
      else faults.push({ field: `items[${index}]`, value: id.slice(0, 80), wanted: wantedFor(item, ids.indexOf(id) !== index) });
    }
    if (faults.length > 0) throw new BadInputError(faults);
    return found;
  }
}

function wantedFor(item: FloorItem | null, isTwice: boolean): string {
  if (!item) return 'the serial of an item on file';
  if (isTwice) return 'each item once';
  return item.kind === 'cart' ? 'a cart with what stands on it: read it as it stands' : 'a thing of its own; pieces of a batch are counted';
}

/** A box that came back by itself no longer stands where the register has it. */
async function liftOff(manager: EntityManager, id: string, cartId: string, who: SignedIn, at: Date): Promise<void> {
  const standing = await stackOn(manager, cartId);
  await readStack(
    manager,
    cartId,
    standing.filter((each) => each !== id),
    who,
    at,
  );
}
