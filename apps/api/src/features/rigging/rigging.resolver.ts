import { Args, Float, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { RiggingService } from './rigging.service.js';
import { OutsideInput, RiggingRecord } from './rigging.types.js';

const id = { type: () => ID } as const;

@Resolver()
export class RiggingResolver {
  constructor(private readonly service: RiggingService) {}

  @AllowEverybody()
  @Query(() => RiggingRecord, { description: 'Load-cell readings and signatures of a plan.' })
  riggingRecord(@Args('planId', id) planId: string): Promise<RiggingRecord> {
    return this.service.record(planId);
  }

  @Allow('system', 'safety')
  @Mutation(() => RiggingRecord, { description: 'What a load cell shows, on a released plan.' })
  addLoadReading(
    @Args('planId', id) planId: string,
    @Args('hang') hang: string,
    @Args('hole') hole: string,
    @Args('place') place: string,
    @Args('readingKg', { type: () => Float }) readingKg: number,
    @Me() me: SignedIn,
  ): Promise<RiggingRecord> {
    return this.service.addReading(planId, hang, hole, place, readingKg, me);
  }

  @Allow('system', 'safety')
  @Mutation(() => RiggingRecord, {
    description:
      'The inspection after assembly or the handover of a hang, signed; or an inspection countersigned by somebody from outside.',
  })
  signOff(
    @Args('planId', id) planId: string,
    @Args('hang') hang: string,
    @Args('kind') kind: string,
    @Args('name') name: string,
    @Args('remark') remark: string,
    @Args('outside', { type: () => OutsideInput, nullable: true, description: 'Of whoever is not on file in the house.' })
    outside: OutsideInput | null | undefined,
    @Me() me: SignedIn,
  ): Promise<RiggingRecord> {
    return this.service.signOff({ planId, hang, kind, name, remark, outside: outside ?? null }, me);
  }
}
