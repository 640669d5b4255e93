import { Field, ID, Int, ObjectType } from '@nestjs/graphql';

@ObjectType({ description: 'A show that was taken off its tour and can be put back.' })
export class RemovedShow {
  @Field(() => ID)
  showId: string;

  @Field()
  name: string;

  @Field()
  from: string;

  @Field()
  to: string;

  @Field()
  removedOn: string;

  @Field(() => String, { nullable: true })
  removedBy: string | null;

  @Field(() => [String], { description: 'Revisions that were released; they stay on file.' })
  revisions: string[];
}

@ObjectType({ description: 'A tour that was removed and can be put back.' })
export class RemovedTour {
  @Field(() => ID)
  id: string;

  @Field()
  name: string;

  @Field()
  prepFrom: string;

  @Field()
  returnTo: string;

  @Field(() => Int)
  version: number;

  @Field()
  removedOn: string;

  @Field(() => String, { nullable: true })
  removedBy: string | null;

  @Field(() => Int, { description: 'How many revisions were released; they stay on file.' })
  revisions: number;
}

@ObjectType({ description: 'What a removal takes along, said before it is done.' })
export class TakenAlong {
  @Field(() => Int)
  shows: number;

  @Field(() => Int)
  hangs: number;

  @Field(() => Int)
  boxes: number;

  @Field(() => Int, { description: 'Drafts that nobody works on until it is put back.' })
  drafts: number;

  @Field(() => [String], { description: 'Shows with a revision in force, which is superseded.' })
  inForce: string[];

  @Field(() => Int, { description: 'Released revisions, which stay on file: what was once released is closed, never removed.' })
  revisions: number;

  @Field(() => Int, { description: 'Items that are given back.' })
  givenBack: number;
}
