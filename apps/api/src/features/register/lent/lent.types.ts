import { Field, Float, ID, InputType, Int, ObjectType } from '@nestjs/graphql';
import type { Lent } from '#tour-file';
import { AnyJson } from '../../../platform/graphql/scalars.js';

@ObjectType({ description: 'Kit of others that is here, or was.' })
export class LentKit {
  @Field(() => ID)
  itemId: string;

  @Field()
  kind: string;

  @Field()
  model: string;

  @Field(() => Int, { nullable: true })
  count: number | null;

  @Field()
  depot: string;

  @Field({ description: 'Whose it is, by name.' })
  owner: string;

  @Field(() => AnyJson, { description: 'Kind of owner, delivery, paper, clearing, return.' })
  lent: Lent;

  @Field(() => String, { nullable: true, description: 'Why it may not be used as kit of others: paper-missing, given-back.' })
  barredBy: string | null;
}

@InputType({ description: 'Kit of others as it is delivered.' })
export class LentKitInput {
  @Field(() => String, { nullable: true, description: 'Its serial, where it has one; else it gets a name here.' })
  serial?: string | null;

  @Field()
  kind: string;

  @Field({ description: 'A model on file of that kind: its class, rated load and mass are what is planned with.' })
  model: string;

  @Field(() => Int, { nullable: true, description: 'Of a batch.' })
  count?: number | null;

  @Field({ description: 'lender, rigging contractor, venue' })
  by: string;

  @Field()
  owner: string;

  @Field({ description: 'The depot or place by its name in the register.' })
  depot: string;

  @Field()
  on: string;

  @Field({ description: 'In which state it was delivered.' })
  condition: string;

  @Field(() => String, { nullable: true, description: 'What its plate says.' })
  ratedLoad?: string | null;

  @Field(() => Float, { nullable: true, description: 'What its plate says.' })
  massKg?: number | null;
}

@ObjectType()
export class TakenIn {
  @Field(() => ID)
  itemId: string;

  @Field(() => [String], { description: 'What of it waits for the safety officer.' })
  waits: string[];
}
