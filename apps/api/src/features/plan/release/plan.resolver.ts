import { Args, Field, ID, Int, Mutation, ObjectType, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, AllowEverybody, ByDeputy, Me } from '../../../platform/sign-in/signed-in.js';
import { PlanDifferenceQuery } from '../page/plan-difference.query.js';
import { CountersignInput } from '../../rigging/sign-off.writer.js';
import { PlanService } from './plan.service.js';
import { ShowPageQuery } from '../page/show-page.query.js';
import {
  BookingRefusal,
  CartCheckResult,
  PlanDifferenceView,
  PlanView,
  ReleaseResult,
  ShowPage,
  StaleRefusal,
  StopRefusal,
} from '../plan.types.js';

@ObjectType()
export class ShowState {
  @Field(() => ID)
  showId: string;

  @Field()
  state: string;

  @Field(() => String, { nullable: true })
  revision: string | null;

  @Field(() => Int)
  stops: number;

  @Field(() => Int)
  looks: number;
}

const id = { type: () => ID } as const;

@Resolver()
export class PlanResolver {
  constructor(
    private readonly page: ShowPageQuery,
    private readonly differences: PlanDifferenceQuery,
    private readonly service: PlanService,
  ) {}

  @AllowEverybody()
  @Query(() => ShowPage)
  showPage(@Args('tourId', id) tourId: string, @Args('showId', id) showId: string): Promise<ShowPage> {
    return this.page.page(tourId, showId);
  }

  @AllowEverybody()
  @Query(() => String, {
    description:
      'Another text whenever ticks, carts read, plans in force or the tour of a show are others: a few bytes for who asks again and again.',
  })
  showVersion(@Args('tourId', id) tourId: string, @Args('showId', id) showId: string): Promise<string> {
    return this.page.version(tourId, showId);
  }

  @AllowEverybody()
  @Query(() => [ShowState], { description: 'The plan of each show of a tour: released, else draft; shows without one are left out.' })
  showStates(@Args('tourId', id) tourId: string): Promise<ShowState[]> {
    return this.page.heads(tourId);
  }

  @AllowEverybody()
  @Query(() => PlanView)
  plan(@Args('id', id) planId: string): Promise<PlanView> {
    return this.page.plan(planId);
  }

  @AllowEverybody()
  @Query(() => PlanDifferenceView)
  planDifference(@Args('from', id) from: string, @Args('to', id) to: string): Promise<PlanDifferenceView> {
    return this.differences.difference(from, to);
  }

  @Allow('system', 'safety')
  @ByDeputy('rows')
  @Mutation(() => ReleaseResult)
  async releasePackPlan(
    @Args('planId', id) planId: string,
    @Args('despite', { type: () => String, nullable: true, description: 'Why, where the plan says stop.' }) despite: string | null,
    @Args('countersign', { type: () => CountersignInput, nullable: true, description: 'A second person, from outside, by name.' })
    countersign: CountersignInput | null | undefined,
    @Me() me: SignedIn,
  ): Promise<PlanView | BookingRefusal | StaleRefusal | StopRefusal> {
    const outcome = await this.service.release(planId, despite ?? null, countersign ?? null, me);
    return outcome.ok ? this.page.plan(outcome.value) : outcome.error;
  }

  @AllowEverybody()
  @Mutation(() => CartCheckResult, { description: 'Serials read off a cart, top first, against the load it should carry.' })
  confirmCart(
    @Args('planId', id) planId: string,
    @Args('load') load: string,
    @Args('serials', { type: () => [String] }) serials: string[],
    @Me() me: SignedIn,
  ): Promise<CartCheckResult> {
    return this.service.confirmCart(planId, load, serials, me);
  }

  @AllowEverybody()
  @Mutation(() => PlanView)
  async tick(
    @Args('planId', id) planId: string,
    @Args('what') what: string,
    @Args('done') done: boolean,
    @Args('remark', {
      type: () => String,
      nullable: true,
      description: 'Who did it together, or what the paper says that it is entered from.',
    })
    remark: string | null,
    @Me() me: SignedIn,
  ): Promise<PlanView> {
    await this.service.tick(planId, what, done, remark ?? null, me);
    return this.page.plan(planId);
  }
}
