import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { PageInfo } from '../../platform/graphql/page-info.js';
import { AnyJson } from '../../platform/graphql/scalars.js';

@ObjectType()
export class LogRowChange {
  @Field({ description: 'The table whose row was changed.' })
  table: string;

  @Field(() => String, { nullable: true })
  key: string | null;

  @Field(() => AnyJson, { nullable: true, description: 'What differs, as it was; null for a row that is new.' })
  before: object | null;

  @Field(() => AnyJson, { nullable: true, description: 'What differs, as it is; null for a row that was removed.' })
  after: object | null;
}

@ObjectType()
export class LogLine {
  @Field(() => ID)
  id: string;

  @Field()
  at: string;

  @Field(() => String, { nullable: true, description: 'When it was done by the clock of the device, where it was sent later.' })
  doneAt: string | null;

  @Field()
  who: string;

  @Field(() => ID, { nullable: true })
  personId: string | null;

  @Field(() => String, { nullable: true, description: 'The operation, address or job by which it was done.' })
  via: string | null;

  @Field()
  sentence: string;

  @Field(() => ID, { nullable: true })
  itemId: string | null;

  @Field(() => ID, { nullable: true })
  tourId: string | null;

  @Field(() => String, { nullable: true })
  tourName: string | null;

  @Field(() => ID, { nullable: true })
  showId: string | null;

  @Field(() => [LogRowChange], { description: 'Up to 20 of the rows that it changed.' })
  rows: LogRowChange[];

  @Field(() => Int, { description: 'Rows beyond those.' })
  moreRows: number;
}

@ObjectType()
export class LogLineEdge {
  @Field()
  cursor: string;

  @Field(() => LogLine)
  node: LogLine;
}

@ObjectType()
export class LogLineConnection {
  @Field(() => [LogLineEdge])
  edges: LogLineEdge[];

  @Field(() => PageInfo)
  pageInfo: PageInfo;
}

@ObjectType({ description: 'What was done at once: one request, one import.' })
export class LogAct {
  @Field(() => ID)
  id: string;

  @Field(() => Int, { description: 'Lines of it that are like what is looked for, up to 10,000.' })
  lines: number;

  @Field()
  isMoreThanCounted: boolean;

  @Field(() => LogLine, { description: 'The line that stands for it: of no single item where there is one, else its newest.' })
  line: LogLine;
}

@ObjectType()
export class LogActEdge {
  @Field()
  cursor: string;

  @Field(() => LogAct)
  node: LogAct;
}

@ObjectType()
export class LogActConnection {
  @Field(() => [LogActEdge])
  edges: LogActEdge[];

  @Field(() => PageInfo)
  pageInfo: PageInfo;
}

@ObjectType()
export class LogSeal {
  @Field({ description: 'SHA-256, hex: what is printed and what verify-log takes.' })
  head: string;

  @Field(() => Int, { description: 'Lines for which it stands.' })
  lines: number;

  @Field()
  sealedAt: string;
}
