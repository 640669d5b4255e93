import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { PageInfo } from '../../../platform/graphql/page-info.js';

@ObjectType()
export class ProposedFigure {
  @Field()
  name: string;

  @Field(() => String, { nullable: true, description: 'What holds now; null: nothing is said.' })
  was: string | null;

  @Field(() => String, { nullable: true })
  wanted: string | null;
}

@ObjectType('Proposal')
export class ProposalView {
  @Field(() => ID)
  id: string;

  @Field({ description: 'model, item, record, system, load rule or examination rule.' })
  kind: string;

  @Field({ description: 'The serial, the model, the rule.' })
  subject: string;

  @Field(() => ID, { nullable: true })
  itemId: string | null;

  @Field({ description: 'What waits, and what holds until then.' })
  sentence: string;

  @Field(() => [ProposedFigure])
  figures: ProposedFigure[];

  @Field({ description: 'Whoever asks proposed it, and does not judge alone: another one accepts it.' })
  isOwn: boolean;

  @Field()
  proposedBy: string;

  @Field()
  proposedAt: string;

  @Field(() => String, { nullable: true })
  reason: string | null;
}

@ObjectType()
export class ProposalEdge {
  @Field()
  cursor: string;

  @Field(() => ProposalView)
  node: ProposalView;
}

@ObjectType()
export class ProposalConnection {
  @Field(() => [ProposalEdge])
  edges: ProposalEdge[];

  @Field(() => PageInfo)
  pageInfo: PageInfo;

  @Field(() => Int)
  totalCount: number;

  @Field(() => ID, { nullable: true, description: 'The newest that waits: whoever answers all, answers up to it.' })
  newest: string | null;

  @Field({
    description: 'Something of what waits was proposed by whoever asks, who does not judge alone: all at once another one accepts.',
  })
  holdsOwn: boolean;
}

@ObjectType({ description: 'One signed answer to all that waited, carried out in portions.' })
export class ProposalAnswering {
  @Field(() => ID)
  id: string;

  @Field({ description: 'Accepted, or declined.' })
  accept: boolean;

  @Field()
  reason: string;

  @Field()
  askedBy: string;

  @Field()
  isGoing: boolean;

  @Field(() => Int, { description: 'What waited when it was signed.' })
  total: number;

  @Field(() => Int)
  answered: number;

  @Field(() => Int, { description: 'Answered, or looked at and left as it is.' })
  looked: number;

  @Field(() => [String], { description: 'Why some stay as they are: the first twenty.' })
  leftBecause: string[];

  @Field(() => Int, { description: 'Since it was signed, or until it ended.' })
  seconds: number;
}
