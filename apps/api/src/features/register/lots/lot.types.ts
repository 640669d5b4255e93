import { Field, ID, Int, ObjectType } from '@nestjs/graphql';

@ObjectType()
export class SplitResult {
  @Field(() => ID, { description: 'The new batch.' })
  taken: string;

  @Field(() => Int, { description: 'Pieces that are left in the old one.' })
  left: number;
}

@ObjectType()
export class LotSplit {
  @Field(() => ID)
  parentId: string;

  @Field(() => ID)
  childId: string;

  @Field(() => Int)
  pieces: number;

  @Field(() => Int, { description: 'What the batch held before.' })
  ofPieces: number;

  @Field({ description: 'Of the new batch at that time.' })
  state: string;

  @Field()
  reason: string;

  @Field()
  madeBy: string;

  @Field()
  madeAt: string;
}
