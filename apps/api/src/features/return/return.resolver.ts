import { Inject } from '@nestjs/common';
import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import { CLOCK, type Clock, today } from '../../platform/config/config.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { FaultService } from './fault.service.js';
import { ReturnQuery } from './return.query.js';
import { ReturnService } from './return.service.js';
import { FaultSheet, OpenFaultView, ReturnPieceView } from './return.types.js';

const id = { type: () => ID } as const;
const ids = { type: () => [ID] } as const;

@Resolver()
export class ReturnResolver {
  constructor(
    private readonly query: ReturnQuery,
    private readonly service: ReturnService,
    private readonly faults: FaultService,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  @AllowEverybody()
  @Query(() => [ReturnPieceView], { description: 'Every thing that travelled with a show, back or not; pieces of batches are counted.' })
  async returnSheet(@Args('planId', id) planId: string): Promise<ReturnPieceView[]> {
    return [...(await this.query.pieces(planId))];
  }

  @AllowEverybody()
  @Query(() => FaultSheet, { description: 'An item with the faults that were found of it, where it flies, and what could stand for it.' })
  faultSheet(@Args('itemId', id) itemId: string): Promise<FaultSheet> {
    return this.query.fault(itemId, today(this.clock));
  }

  @AllowEverybody()
  @Query(() => [OpenFaultView], { description: 'Faults of what a plan uses that no test has answered yet.' })
  openFaults(@Args('planId', id) planId: string): Promise<OpenFaultView[]> {
    return this.query.open(planId);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => [ReturnPieceView], { description: 'A cart that came back, as it stands, top first: the floor follows.' })
  async returnCart(
    @Args('planId', id) planId: string,
    @Args('cart', id) cart: string,
    @Args('serials', ids) serials: string[],
    @Me() me: SignedIn,
  ): Promise<ReturnPieceView[]> {
    await this.service.cart(planId, cart, serials, me);
    return this.returnSheet(planId);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => [ReturnPieceView], { description: 'Things that came back by themselves.' })
  async returnItems(
    @Args('planId', id) planId: string,
    @Args('items', ids) items: string[],
    @Me() me: SignedIn,
  ): Promise<ReturnPieceView[]> {
    await this.service.items(planId, items, me);
    return this.returnSheet(planId);
  }

  @AllowEverybody()
  @Mutation(() => FaultSheet, {
    description:
      'A fault, its kind first. rigging: out of service at once, until it is examined and released. sound: out, or at the bottom of a hang. looks: flies meanwhile.',
  })
  async reportFault(
    @Args('itemId', id) itemId: string,
    @Args('kind', { description: 'rigging, sound or looks.' }) kind: string,
    @Args('what') what: string,
    @Args('then', { description: 'rigging: out. sound: out or bottom. looks: flies.' }) then: string,
    @Args('pieces', { type: () => Int, nullable: true, description: 'Of a batch: how many pieces.' }) pieces: number | null,
    @Me() me: SignedIn,
  ): Promise<FaultSheet> {
    await this.faults.report(itemId, { kind, what, then, pieces: pieces ?? null }, me);
    return this.faultSheet(itemId);
  }
}
