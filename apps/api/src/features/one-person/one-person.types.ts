import { Field, ObjectType } from '@nestjs/graphql';

@ObjectType({ description: 'A time in which one person judged alone in this house.' })
export class OnePersonTime {
  @Field({ description: 'ISO 8601.' })
  since: string;

  @Field(() => String, { nullable: true, description: 'ISO 8601; null while it holds.' })
  until: string | null;

  @Field({ description: 'The safety officer who set it.' })
  by: string;

  @Field()
  reason: string;

  @Field(() => String, { nullable: true })
  endedBecause: string | null;
}
