import { Args, Field, ID, Mutation, ObjectType, Query, Resolver } from '@nestjs/graphql';
import type { BetweenShows, WorkList } from '#pack-plan';
import { BetweenShowsJson, WorkListJson } from '../../../platform/graphql/scalars.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, Me } from '../../../platform/sign-in/signed-in.js';
import { WorkService } from './work.service.js';

@ObjectType()
export class BetweenShowsView {
  @Field()
  from: string;

  @Field()
  to: string;

  @Field(() => BetweenShowsJson)
  what: BetweenShows;
}

const id = { type: () => ID } as const;

@Resolver()
export class WorkResolver {
  constructor(private readonly service: WorkService) {}

  @Query(() => WorkListJson, { description: 'What is left to do for a plan on the floor as it now stands.' })
  workList(@Args('planId', id) planId: string): Promise<WorkList> {
    return this.service.list(planId);
  }

  @Query(() => [BetweenShowsView], { description: 'What happens to the carts between the shows of a tour.' })
  async betweenShows(@Args('tourId', id) tourId: string): Promise<BetweenShowsView[]> {
    return [...(await this.service.between(tourId))];
  }

  @Allow('warehouse', 'system')
  @Mutation(() => WorkListJson, { description: 'One box move of the list, carried out.' })
  doMove(
    @Args('planId', id) planId: string,
    @Args('box') box: string,
    @Args('from') from: string,
    @Args('to') to: string,
    @Me() me: SignedIn,
  ): Promise<WorkList> {
    return this.service.doMove(planId, { box, from, to }, me);
  }
}
