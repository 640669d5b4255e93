import { Args, Float, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { PrepQuery } from './prep.query.js';
import { PrepService } from './prep.service.js';
import { CountedInTrunk, PrepSheet } from './prep.types.js';

const id = { type: () => ID } as const;

@Resolver()
export class PrepResolver {
  constructor(
    private readonly query: PrepQuery,
    private readonly service: PrepService,
  ) {}

  @AllowEverybody()
  @Query(() => PrepSheet, { description: 'What a plan uses and where that is, with what was tested, read back and counted.' })
  prepSheet(@Args('planId', id) planId: string): Promise<PrepSheet> {
    return this.query.sheet(planId);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => Boolean, { description: 'A bench test of a box: what failed is out of service at once.' })
  async benchTest(
    @Args('planId', id) planId: string,
    @Args('itemId', id) itemId: string,
    @Args('failed', { type: () => [String], description: 'sound, drivers, connectors, pins, links, handles, label; none: passed.' })
    failed: string[],
    @Args('remark') remark: string,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.bench(planId, itemId, failed, remark, me);
    return true;
  }

  @Allow('warehouse', 'system')
  @Mutation(() => Boolean, { description: 'Splays that are set in a cart as they are read back, top first.' })
  async readSplays(
    @Args('planId', id) planId: string,
    @Args('load') load: string,
    @Args('splays', { type: () => [Float] }) splays: number[],
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.splays(planId, load, splays, me);
    return true;
  }

  @Allow('warehouse', 'system')
  @Mutation(() => Boolean, { description: 'A trunk as it was counted, batch by batch.' })
  async countTrunk(
    @Args('planId', id) planId: string,
    @Args('trunk', id) trunk: string,
    @Args('counts', { type: () => [CountedInTrunk] }) counts: CountedInTrunk[],
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.trunk(planId, trunk, counts, me);
    return true;
  }
}
