import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import type { Kept, ReportLine } from '#records';
import type { Examination } from '#tour-file';
import { PageInfo } from '../../../platform/graphql/page-info.js';
import { AnyJson } from '../../../platform/graphql/scalars.js';

@ObjectType()
export class ReportFileFacts {
  @Field(() => ID)
  id: string;

  @Field()
  name: string;

  @Field()
  type: string;

  @Field(() => Int)
  sizeBytes: number;

  @Field({ description: 'In hex, of the file as it was handed in.' })
  sha256: string;
}

@ObjectType()
export class ExaminationRecord {
  @Field(() => ID)
  id: string;

  @Field(() => AnyJson)
  examination: Examination;

  @Field()
  recordedBy: string;

  @Field()
  recordedAt: string;

  /** The record that took its place; null while it counts. */
  @Field(() => ID, { nullable: true })
  supersededBy: string | null;

  @Field(() => String, { nullable: true, description: 'Why it corrects an earlier record.' })
  reason: string | null;

  @Field(() => ID, { nullable: true, description: 'The record that it corrects.' })
  supersedes: string | null;

  @Field(() => ReportFileFacts, { nullable: true })
  file: ReportFileFacts | null;

  @Field(() => AnyJson, { description: 'Until when it is kept by the rules in force, and where that stands.' })
  kept: Kept;

  @Field(() => AnyJson, { description: 'Every field of the report in the order in which it is read, those that it leaves open too.' })
  lines: readonly ReportLine[];
}

@ObjectType()
export class ExaminationRecordEdge {
  @Field()
  cursor: string;

  @Field(() => ExaminationRecord)
  node: ExaminationRecord;
}

@ObjectType()
export class ExaminationRecordConnection {
  @Field(() => [ExaminationRecordEdge])
  edges: ExaminationRecordEdge[];

  @Field(() => PageInfo)
  pageInfo: PageInfo;
}
