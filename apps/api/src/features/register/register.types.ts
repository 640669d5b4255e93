import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { PageInfo } from '../../platform/graphql/page-info.js';
import { ItemJson, ModelJson } from '../../platform/graphql/scalars.js';

@ObjectType()
export class ItemSummary {
  @Field(() => ID)
  id: string;

  @Field()
  kind: string;

  @Field()
  model: string;

  @Field()
  state: string;

  @Field()
  depot: string;

  @Field(() => Int, { nullable: true })
  count: number | null;

  /** Where it is, in words. */
  @Field()
  place: string;

  /** Last day it may be used today; null where it is not examined or may not be used. */
  @Field(() => String, { nullable: true })
  dueOn: string | null;

  @Field(() => String, { nullable: true })
  dueState: string | null;
}

@ObjectType()
export class ItemEdge {
  @Field()
  cursor: string;

  @Field(() => ItemSummary)
  node: ItemSummary;
}

@ObjectType()
export class ItemConnection {
  @Field(() => [ItemEdge])
  edges: ItemEdge[];

  @Field(() => PageInfo)
  pageInfo: PageInfo;

  @Field(() => Int, { description: 'How many fit, counted up to 1,000.' })
  totalCount: number;

  @Field({ description: 'More fit than were counted.' })
  isMoreThanCounted: boolean;
}

@ObjectType()
export class ExaminedConnection {
  @Field(() => [ItemEdge])
  edges: ItemEdge[];

  @Field(() => PageInfo)
  pageInfo: PageInfo;
}

@ObjectType()
export class HistoryEvent {
  @Field()
  at: string;

  @Field()
  who: string;

  @Field()
  what: string;

  @Field()
  sentence: string;
}

@ObjectType()
export class ItemPromise {
  @Field()
  tour: string;

  @Field()
  from: string;

  @Field()
  to: string;

  @Field(() => Int, { nullable: true })
  count: number | null;
}

@ObjectType()
export class HistoryEdge {
  @Field()
  cursor: string;

  @Field(() => HistoryEvent)
  node: HistoryEvent;
}

@ObjectType()
export class HistoryConnection {
  @Field(() => [HistoryEdge])
  edges: HistoryEdge[];

  @Field(() => PageInfo)
  pageInfo: PageInfo;
}

@ObjectType('ItemPage')
export class ItemHead {
  @Field(() => ID)
  id: string;

  @Field(() => ItemJson, { description: 'The item as it is on file; its records and incidents are asked for apart.' })
  item: object;

  @Field(() => ItemSummary)
  summary: ItemSummary;

  @Field(() => [ItemPromise], { description: 'The fifty that end last.' })
  promises: ItemPromise[];
}

@ObjectType()
export class CatalogueModel {
  @Field()
  kind: string;

  @Field()
  model: string;

  @Field(() => ModelJson)
  data: object;

  @Field(() => Int)
  itemCount: number;
}
