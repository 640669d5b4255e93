import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import { AnyJson } from '../../../platform/graphql/scalars.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../../platform/sign-in/signed-in.js';
import { LotReader } from './lot.reader.js';
import { LotService } from './lot.service.js';
import { LotSplit, SplitResult } from './lot.types.js';

@Resolver()
export class LotResolver {
  constructor(
    private readonly service: LotService,
    private readonly reader: LotReader,
  ) {}

  @AllowEverybody()
  @Query(() => [LotSplit], { description: 'Where a batch came from and what was taken out of it.' })
  lotSplits(@Args('itemId', { type: () => ID }) itemId: string): Promise<LotSplit[]> {
    return this.reader.splits(itemId);
  }

  @AllowEverybody()
  @Mutation(() => SplitResult, {
    description:
      'Takes some pieces out of a batch into one of their own, which is quarantined or retired; records of the batch are records of both.',
  })
  splitLot(
    @Args('itemId', { type: () => ID }) itemId: string,
    @Args('pieces', { type: () => Int }) pieces: number,
    @Args('state', { description: 'quarantined or retired.' }) state: string,
    @Args('reason') reason: string,
    @Args('examination', {
      type: () => AnyJson,
      nullable: true,
      description: 'The failed examination of these pieces; by the safety officer.',
    })
    examination: object | null,
    @Me() me: SignedIn,
  ): Promise<SplitResult> {
    return this.service.split({ itemId, pieces, state, reason, examination: examination ?? null }, me);
  }
}
