import { Field, ObjectType } from '@nestjs/graphql';

/** As in GraphQL Cursor Connections. */
@ObjectType()
export class PageInfo {
  @Field()
  hasNextPage: boolean;

  @Field(() => String, { nullable: true })
  endCursor: string | null;
}
