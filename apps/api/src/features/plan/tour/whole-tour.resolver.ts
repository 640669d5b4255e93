import { Args, Field, Float, ID, Int, Mutation, ObjectType, Query, Resolver, createUnionType } from '@nestjs/graphql';
import type { WholeTour } from '#pack-plan';
import { WholeTourJson } from '../../../platform/graphql/scalars.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../../platform/sign-in/signed-in.js';
import { AskedArgs } from '../../../planning/jobs/asked.args.js';
import { outcomeOf } from '../../../planning/jobs/job-outcome.js';
import { JobUnderWay, PlanningRefusal } from '../../../planning/jobs/job.types.js';
import { Jobs } from '../../../planning/jobs/jobs.js';
import { WholeTourService } from './whole-tour.service.js';

@ObjectType({ description: 'Prep and all load-ins of a tour, planned together.' })
export class WholeTourView {
  @Field(() => WholeTourJson)
  plan: WholeTour;

  @Field()
  madeAt: string;

  @Field(() => String, { nullable: true })
  madeBy: string | null;
}

@ObjectType({ description: 'The tour was planned as a whole.' })
class TourPlanned {
  @Field(() => ID)
  tourId: string;
}

const TourPlanResult = createUnionType({
  name: 'TourPlanResult',
  types: () => [TourPlanned, PlanningRefusal, JobUnderWay] as const,
  resolveType: (value: object) => ('tourId' in value ? TourPlanned : 'job' in value ? JobUnderWay : PlanningRefusal),
});

const id = { type: () => ID } as const;

@Resolver()
export class WholeTourResolver {
  constructor(
    private readonly service: WholeTourService,
    private readonly jobs: Jobs,
  ) {}

  @AllowEverybody()
  @Query(() => WholeTourView, { nullable: true, description: 'The tour as it was last planned as a whole.' })
  async wholeTour(@Args('tourId', id) tourId: string): Promise<WholeTourView | null> {
    const found = await this.service.onFile(tourId);
    return found && { ...found, madeAt: found.madeAt.toISOString() };
  }

  @Allow('system', 'warehouse')
  @Mutation(() => TourPlanResult, { description: 'Plans prep and all load-ins together, for the fewest box moves by their weights.' })
  async planWholeTour(
    @Args() { waitMs }: AskedArgs,
    @Args('tourId', id) tourId: string,
    @Args('depot', { type: () => Float, description: 'What a box move counts at prep.' }) depot: number,
    @Args('dock', { type: () => Float, description: 'What it counts between shows.' }) dock: number,
    @Args('fixedUntil', { type: () => Int, description: 'Shows from the first that stay as they are planned; 0: none.' })
    fixedUntil: number,
    @Me() me: SignedIn,
  ): Promise<TourPlanned | PlanningRefusal | JobUnderWay> {
    const job = await this.service.plan({ tourId, weights: { depot, dock }, fixedUntil }, me);
    return outcomeOf(await this.jobs.wait(job, waitMs), (answer: TourPlanned) => answer);
  }
}
