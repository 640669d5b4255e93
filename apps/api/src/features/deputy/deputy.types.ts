import { Field, ID, InputType, ObjectType } from '@nestjs/graphql';

@InputType()
export class DeputyInput {
  @Field(() => ID, { description: 'Who acts.' })
  personId: string;

  @Field(() => ID, { description: 'In the place of which safety officer.' })
  officerId: string;

  @Field({ description: 'First day, YYYY-MM-DD.' })
  from: string;

  @Field({ description: 'Last day.' })
  until: string;

  @Field({ description: 'By whose calendar: a zone of the time zone database.' })
  timeZone: string;

  @Field(() => String, { nullable: true, description: 'For what belongs to this depot alone.' })
  depot: string | null;

  @Field(() => ID, { nullable: true, description: 'For this tour alone.' })
  tourId: string | null;

  @Field()
  reason: string;

  @Field(() => String, {
    nullable: true,
    description: 'Lets in once, within a day, to choose the own one; wanted where no safety officer has given this person one yet.',
  })
  password: string | null;
}

@ObjectType()
export class DeputyView {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  personId: string;

  @Field()
  person: string;

  @Field(() => ID)
  officerId: string;

  @Field()
  officer: string;

  @Field()
  from: string;

  @Field()
  until: string;

  @Field(() => String, { nullable: true })
  depot: string | null;

  @Field(() => ID, { nullable: true })
  tourId: string | null;

  @Field(() => String, { nullable: true, description: 'Name of the tour.' })
  tour: string | null;

  @Field()
  reason: string;

  @Field()
  namedBy: string;

  @Field({ description: 'to sign: waits for a second safety officer; to come; now; over; withdrawn; void: the officer is none any more.' })
  state: string;
}
