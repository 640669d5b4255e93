import { Field, ID, ObjectType, createUnionType } from '@nestjs/graphql';
import { JobUnderWay, PlanningRefusal } from '../../../planning/jobs/job.types.js';
import { SwapResult } from '../plan.types.js';

@ObjectType({ description: 'The draft was made.' })
export class PlanMade {
  @Field(() => ID)
  planId: string;
}

export const MakeResult = createUnionType({
  name: 'MakeResult',
  types: () => [PlanMade, PlanningRefusal, JobUnderWay] as const,
  resolveType: (value: object) => ('planId' in value ? PlanMade : 'job' in value ? JobUnderWay : PlanningRefusal),
});

export const SwapOutcome = createUnionType({
  name: 'SwapOutcome',
  types: () => [SwapResult, PlanningRefusal, JobUnderWay] as const,
  resolveType: (value: object) => ('draftId' in value ? SwapResult : 'job' in value ? JobUnderWay : PlanningRefusal),
});
