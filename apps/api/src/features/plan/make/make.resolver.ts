import { Args, ID, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, Me } from '../../../platform/sign-in/signed-in.js';
import { AskedArgs } from '../../../planning/jobs/asked.args.js';
import { outcomeOf } from '../../../planning/jobs/job-outcome.js';
import { Job, type JobUnderWay, type PlanningRefusal, viewOf } from '../../../planning/jobs/job.types.js';
import { Jobs } from '../../../planning/jobs/jobs.js';
import { MakeService } from './make.service.js';
import { MakeResult, PlanMade, SwapOutcome } from './make.types.js';
import { PlanView, SwapResult } from '../plan.types.js';
import { ShowPageQuery } from '../page/show-page.query.js';

const id = { type: () => ID } as const;

/** What plans are asked for, and what comes of it. */
@Resolver(() => PlanMade)
export class MakeResolver {
  constructor(
    private readonly service: MakeService,
    private readonly jobs: Jobs,
    private readonly page: ShowPageQuery,
  ) {}

  @ResolveField(() => PlanView)
  plan(@Parent() { planId }: PlanMade): Promise<PlanView> {
    return this.page.plan(planId);
  }

  @Allow('system', 'warehouse')
  @Mutation(() => MakeResult, { description: 'Makes the draft plan of a show from everything as it now is.' })
  async makePackPlan(
    @Args() { waitMs }: AskedArgs,
    @Args('tourId', id) tourId: string,
    @Args('showId', id) showId: string,
    @Me() me: SignedIn,
  ): Promise<PlanMade | PlanningRefusal | JobUnderWay> {
    const job = await this.service.make(tourId, showId, me);
    return outcomeOf(await this.jobs.wait(job, waitMs), ({ planId }: { planId: string }) => ({ planId }));
  }

  @Allow('warehouse', 'system')
  @Mutation(() => SwapOutcome, { description: 'A box failed: it is quarantined at once, and a draft is made that changes least.' })
  async swapBox(
    @Args() { waitMs }: AskedArgs,
    @Args('planId', id) planId: string,
    @Args('serial') serial: string,
    @Args('reason') reason: string,
    @Me() me: SignedIn,
  ): Promise<SwapResult | PlanningRefusal | JobUnderWay> {
    const job = await this.service.swap(planId, serial, reason, me);
    return outcomeOf(await this.jobs.wait(job, waitMs), (answer: SwapResult) => answer);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => Job, { description: 'Looks longer for fewer moves and shorter loads; a search that is going already is given back.' })
  async startSearch(@Args('tourId', id) tourId: string, @Args('showId', id) showId: string, @Me() me: SignedIn): Promise<Job> {
    return viewOf(await this.jobs.find(await this.service.search(tourId, showId, me)));
  }
}
