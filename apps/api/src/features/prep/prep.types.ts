import { Field, ID, InputType, Int, ObjectType } from '@nestjs/graphql';
import type { Used } from '#pack-plan';
import { AnyJson } from '../../platform/graphql/scalars.js';

@ObjectType({ description: 'What a plan uses, with where the register has it.' })
export class UsedView implements Used {
  @Field(() => ID)
  id: string;

  @Field()
  kind: string;

  @Field()
  model: string;

  @Field(() => Int, { nullable: true, description: 'Of a batch: how many pieces the plan takes.' })
  count: number | null;

  @Field()
  depot: string;

  @Field(() => String, { nullable: true, description: 'The case that it lies in, or the cart that it stands on.' })
  inside: string | null;
}

@ObjectType({ description: 'The newest of a kind that was put on record of an item for a show.' })
export class PrepRecord {
  @Field(() => ID)
  item: string;

  @Field({ description: 'bench, splays or trunk.' })
  kind: string;

  @Field({ description: 'Passed, as planned, or complete.' })
  agrees: boolean;

  @Field(() => AnyJson, { description: 'What was found.' })
  data: object;

  @Field({ description: 'ISO 8601.' })
  moment: string;

  @Field()
  by: string;
}

@ObjectType()
export class PrepSheet {
  @Field(() => [UsedView])
  uses: UsedView[];

  @Field(() => [PrepRecord])
  records: PrepRecord[];
}

@InputType()
export class CountedInTrunk {
  @Field(() => ID)
  lot: string;

  @Field(() => Int)
  count: number;
}
