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
}
