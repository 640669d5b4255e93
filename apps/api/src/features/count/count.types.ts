import { Field, Float, ID, InputType, Int, ObjectType, createUnionType } from '@nestjs/graphql';

@InputType({ description: 'Pieces of one batch among those of a line that are gone or unfit: the batch becomes that much smaller.' })
export class LotLossInput {
  @Field(() => ID)
  lot: string;

  @Field(() => Int, { description: 'Gone: retired.' })
  lost: number;

  @Field(() => Int, { description: 'Back and unfit: out of service.' })
  unfit: number;
}

@InputType()
export class CountInput {
  @Field({ description: 'Key of the line, as in the plan.' })
  key: string;

  @Field(() => Int)
  sent: number;

  @Field(() => Int, { description: 'What came back at all, the damaged among it.' })
  returned: number;

  @Field(() => Int, { description: 'Of those that came back, unfit for use.' })
  damaged: number;

  @Field(() => [LotLossInput], {
    nullable: true,
    description: 'Which batches they are of; left out: the batches stay as they are on file.',
  })
  lots?: LotLossInput[] | null;
}

@ObjectType()
export class CountView {
  @Field(() => ID)
  id: string;

  @Field()
  key: string;

  @Field(() => [String])
  shows: string[];

  @Field(() => Int)
  sent: number;

  @Field(() => Int)
  returned: number;

  @Field(() => Int)
  damaged: number;

  @Field(() => Int)
  losses: number;

  @Field(() => Int)
  uses: number;

  @Field(() => ID, { nullable: true, description: 'The record that this one takes the place of.' })
  corrects: string | null;

  @Field(() => String, { nullable: true })
  reason: string | null;

  @Field()
  countedBy: string;

  @Field()
  countedAt: string;

  @Field({ description: 'No other record takes its place.' })
  inForce: boolean;
}

@ObjectType()
export class LearnedView {
  @Field(() => Float, { description: 'Loss per use believed before counting.' })
  priorMean: number;

  @Field(() => Int)
  losses: number;

  @Field(() => Int, { description: 'Uses counted, those that the tour file brought among them.' })
  uses: number;

  @Field(() => Float)
  posteriorMean: number;

  @Field(() => Int)
  sparesByPriorAlone: number;
}

@ObjectType()
export class CountLine {
  @Field()
  key: string;

  @Field()
  item: string;

  @Field(() => Int, { description: 'Pieces fitted in this show.' })
  fitted: number;

  @Field(() => Int, { description: 'Spares that the next plan of this show takes.' })
  spares: number;

  @Field(() => LearnedView, { nullable: true })
  learned: LearnedView | null;

  @Field(() => CountView, { nullable: true, description: 'The count in force that covers this show.' })
  counted: CountView | null;
}

@ObjectType()
export class CountShow {
  @Field(() => ID)
  showId: string;

  @Field()
  name: string;
}

@ObjectType()
export class CountSheet {
  @Field(() => ID)
  tourId: string;

  @Field(() => ID)
  showId: string;

  @Field()
  name: string;

  @Field()
  tourName: string;

  @Field(() => [CountShow], { description: 'Shows before this one of which nothing has been counted.' })
  notCountedBefore: CountShow[];

  @Field(() => [CountLine])
  lines: CountLine[];

  @Field(() => [CountView], { description: 'All records of the tour, the newest first.' })
  records: CountView[];
}

@ObjectType()
export class CountRefusal {
  @Field()
  sentence: string;

  @Field(() => [CountView])
  already: CountView[];
}

export const CountResult = createUnionType({
  name: 'CountResult',
  types: () => [CountSheet, CountRefusal] as const,
  resolveType: (value: object) => ('already' in value ? CountRefusal : CountSheet),
});
