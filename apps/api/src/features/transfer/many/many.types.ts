import { Field, ID, InputType, Int, ObjectType, createUnionType } from '@nestjs/graphql';

@InputType({ description: 'A column of the CSV of items, and what is to stand in it; empty clears it.' })
export class CellInput {
  @Field()
  column: string;

  @Field()
  value: string;
}

@ObjectType()
export class ItemWaits {
  @Field(() => ID)
  id: string;

  @Field()
  sentence: string;
}

@ObjectType({ description: 'All of them are saved, but for what waits for the safety officer.' })
export class ManyChanged {
  @Field(() => Int)
  changed: number;

  @Field(() => Int)
  unchanged: number;

  @Field(() => [ItemWaits])
  waits: ItemWaits[];
}

@ObjectType()
export class RefusedItem {
  @Field(() => ID)
  id: string;

  @Field()
  column: string;

  @Field()
  value: string;

  @Field()
  wanted: string;
}

@ObjectType({ description: 'Nothing was saved.' })
export class ManyRefusal {
  @Field(() => [RefusedItem])
  refused: RefusedItem[];
}

export const ManyResult = createUnionType({
  name: 'ManyResult',
  types: () => [ManyChanged, ManyRefusal] as const,
  resolveType: (value: object) => ('refused' in value ? ManyRefusal : ManyChanged),
});
