import { Field, Float, ID, InputType, ObjectType, createUnionType } from '@nestjs/graphql';
import { BookingRefusal } from '../plan.types.js';

@InputType()
export class HoldInput {
  @Field({ description: 'Who or what it is held for.' })
  name: string;

  @Field()
  from: string;

  @Field()
  to: string;

  @Field(() => Float, { description: 'The hold ends by itself after so many hours.' })
  hours: number;

  @Field(() => [String])
  items: string[];
}

@ObjectType()
export class Hold {
  @Field(() => ID)
  id: string;

  @Field()
  name: string;

  @Field()
  from: string;

  @Field()
  to: string;

  @Field()
  until: string;

  @Field(() => [String])
  items: string[];

  @Field(() => [String], {
    description: 'What of it may not be used on these days as things stand now, by all rules on file, each with its reason.',
  })
  barred: string[];
}

export const HoldResult = createUnionType({
  name: 'HoldResult',
  types: () => [Hold, BookingRefusal] as const,
  resolveType: (value: object) => ('clashes' in value ? BookingRefusal : Hold),
});
