import { Field, ObjectType } from '@nestjs/graphql';
import type { InspectedItem } from '#records';
import { AnyJson } from '../../platform/graphql/scalars.js';

@ObjectType()
export class InspectedItems {
  @Field(() => AnyJson, { description: 'InspectedItem of libs/records, by serial.' })
  items: readonly InspectedItem[];

  @Field({ description: 'There are more after the last of these.' })
  hasMore: boolean;
}
