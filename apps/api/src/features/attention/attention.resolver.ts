import { Args, Field, ID, Int, ObjectType, Query, Resolver } from '@nestjs/graphql';
import { PageInfo } from '../../platform/graphql/page-info.js';
import { AllowEverybody } from '../../platform/sign-in/signed-in.js';
import { AttentionQuery } from './attention.query.js';

@ObjectType()
export class AttentionNote {
  @Field()
  role: string;

  @Field()
  weight: string;

  @Field()
  code: string;

  @Field()
  subject: string;

  @Field(() => String, { nullable: true })
  date: string | null;

  @Field()
  sentence: string;

  @Field(() => ID)
  tourId: string;

  @Field(() => ID)
  showId: string;

  @Field({ description: 'Name of the show.' })
  show: string;

  @Field(() => ID, { nullable: true })
  itemId: string | null;
}

@ObjectType()
export class AttentionEdge {
  @Field()
  cursor: string;

  @Field(() => AttentionNote)
  node: AttentionNote;
}

@ObjectType()
export class AttentionConnection {
  @Field(() => [AttentionEdge])
  edges: AttentionEdge[];

  @Field(() => PageInfo)
  pageInfo: PageInfo;

  @Field(() => Int)
  totalCount: number;

  @Field(() => Int, { description: 'Shows that are not over.' })
  showCount: number;

  @Field(() => Int, { description: 'Those of them that have a plan: of the others nothing was judged.' })
  plannedCount: number;
}

@Resolver()
export class AttentionResolver {
  constructor(private readonly query: AttentionQuery) {}

  @AllowEverybody()
  @Query(() => AttentionConnection, { description: 'What needs eyes today, of one of the three roles or of all; stops first.' })
  attention(
    @Args('role', { type: () => String, nullable: true }) role: string | null,
    @Args('first', { type: () => Int, nullable: true }) first: number | null,
    @Args('after', { type: () => String, nullable: true }) after: string | null,
  ): Promise<AttentionConnection> {
    return this.query.notes(role ?? null, first, after);
  }
}
