import { Field, ID, Int, ObjectType } from '@nestjs/graphql';

@ObjectType()
export class FleetDayView {
  @Field()
  day: string;

  @Field(() => Int)
  free: number;

  @Field(() => Int)
  promised: number;

  /** Quarantined, in repair, not hired in, out of date. */
  @Field(() => Int)
  out: number;

  /** What tours without a released plan want beyond what is free. */
  @Field(() => Int)
  short: number;
}

@ObjectType()
export class FleetModelView {
  @Field()
  model: string;

  @Field(() => Int)
  count: number;

  @Field(() => [FleetDayView])
  days: FleetDayView[];
}

@ObjectType()
export class RemedyView {
  @Field(() => ID)
  serial: string;

  @Field()
  kind: string;

  @Field()
  sentence: string;
}
