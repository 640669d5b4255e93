import { Field, Float, ID, Int, ObjectType, createUnionType } from '@nestjs/graphql';
import { JobUnderWay, PlanningRefusal } from '../../planning/jobs/job.types.js';

@ObjectType({ description: 'The trucks were planned anew around what is wanted: a draft, and what it changes.' })
export class LoadingDone {
  @Field(() => ID)
  draftId: string;

  @Field(() => [String])
  changes: string[];
}

export const LoadingResult = createUnionType({
  name: 'LoadingResult',
  types: () => [LoadingDone, PlanningRefusal, JobUnderWay] as const,
  resolveType: (value: object) => ('draftId' in value ? LoadingDone : 'job' in value ? JobUnderWay : PlanningRefusal),
});

@ObjectType()
export class AxleChange {
  @Field()
  axle: string;

  @Field(() => Float)
  beforeKg: number;

  @Field(() => Float)
  afterKg: number;

  @Field(() => Float, { nullable: true })
  limitKg: number | null;
}

@ObjectType()
export class Breach {
  @Field()
  piece: string;

  @Field({ description: 'True for the unloading order, which a reason can waive; other rules are never waived.' })
  mayBeWaived: boolean;

  @Field()
  sentence: string;
}

@ObjectType({ description: 'What two exchanged rows would do, before anybody accepts it.' })
export class RowSwapView {
  @Field(() => Int)
  first: number;

  @Field(() => Int)
  second: number;

  @Field(() => [AxleChange])
  axles: AxleChange[];

  @Field(() => Float)
  sideBeforeMm: number;

  @Field(() => Float)
  sideAfterMm: number;

  @Field(() => [Breach])
  breaches: Breach[];
}
