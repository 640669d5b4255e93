import { Field, Float, ID, ObjectType } from '@nestjs/graphql';

@ObjectType({ description: 'A longer search for the trucks of a show.' })
export class Search {
  @Field(() => ID)
  id: string;

  /** waiting, running, done, stopped, failed */
  @Field()
  state: string;

  /** Part of the work that is done, 0 to 1. */
  @Field(() => Float)
  progress: number;

  /** How it ended, in words; empty until then. */
  @Field()
  sentence: string;

  @Field()
  askedBy: string;
}
