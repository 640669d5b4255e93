import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import type { Tour } from '#tour-file';
import { PageInfo } from '../../platform/graphql/page-info.js';
import { TourJson } from '../../platform/graphql/scalars.js';

@ObjectType()
export class ShowName {
  @Field(() => ID)
  showId: string;

  @Field()
  name: string;
}

@ObjectType()
export class TourHead {
  @Field(() => ID)
  id: string;

  @Field()
  name: string;

  @Field()
  prepFrom: string;

  @Field()
  returnTo: string;

  @Field(() => Int)
  shows: number;

  @Field(() => [ShowName])
  showNames: ShowName[];
}

@ObjectType()
export class TourEdge {
  @Field()
  cursor: string;

  @Field(() => TourHead)
  node: TourHead;
}

@ObjectType()
export class TourConnection {
  @Field(() => [TourEdge])
  edges: TourEdge[];

  @Field(() => PageInfo)
  pageInfo: PageInfo;
}

@ObjectType()
export class TourPage {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => TourJson)
  tour: Tour;
}
