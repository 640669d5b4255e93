import { Field, ID, Int, ObjectType } from '@nestjs/graphql';

@ObjectType({ description: 'A row of the file that is not as it should be.' })
export class FaultyRow {
  @Field(() => Int)
  row: number;

  @Field()
  value: string;
}

@ObjectType({ description: 'Faults that want the same in the same column.' })
export class ImportFaults {
  @Field()
  column: string;

  @Field()
  wanted: string;

  @Field(() => Int)
  count: number;

  @Field(() => [Int], { nullable: true, description: 'Rows of the file that have it, the first two thousand.' })
  rows?: number[] | null;

  @Field(() => [FaultyRow], { description: 'The first five.' })
  first: FaultyRow[];
}

@ObjectType({ description: 'A row that is otherwise than on file.' })
export class ChangedRow {
  @Field(() => ID)
  id: string;

  @Field()
  what: string;
}

@ObjectType({ description: 'What a file changed, or would change; with faults nothing.' })
export class ImportOutcome {
  @Field(() => Int)
  rows: number;

  @Field(() => Int)
  added: number;

  @Field(() => Int)
  changed: number;

  @Field(() => Int)
  unchanged: number;

  @Field(() => Int, { nullable: true, description: 'Of examinations: the new ones that failed, which count at once.' })
  failed?: number | null;

  @Field(() => [String], { nullable: true, description: 'The first thirty of them.' })
  firstFailed?: string[] | null;

  @Field(() => Int, { description: 'Changes that wait for the safety officer.' })
  waiting: number;

  @Field(() => Int, { description: 'Faults in all.' })
  faulty: number;

  @Field(() => [String], { description: 'The first thirty.' })
  firstAdded: string[];

  @Field(() => [ChangedRow], { description: 'The first thirty.' })
  firstChanged: ChangedRow[];

  @Field(() => [String], { description: 'The first thirty, in words.' })
  firstWaiting: string[];

  @Field(() => [ImportFaults], { description: 'The fifty most frequent kinds.' })
  faults: ImportFaults[];
}

@ObjectType({ description: 'A CSV file that comes in beside the requests.' })
export class CsvImportView {
  @Field(() => ID)
  id: string;

  @Field({ description: 'items/box, models/boxes, examinations: the kind of its rows.' })
  of: string;

  @Field({ description: 'It only says what would change.' })
  dryRun: boolean;

  @Field()
  askedBy: string;

  @Field()
  askedAt: Date;

  @Field({ description: 'going, done, refused, failed, cancelled' })
  state: string;

  @Field({ description: 'waiting, reading, checking, writing, dates' })
  step: string;

  @Field(() => Int)
  rowsTotal: number;

  @Field(() => Int)
  rowsChecked: number;

  @Field(() => Int)
  rowsWritten: number;

  @Field(() => Int, { description: 'Rows written whose days of use are worked out.' })
  rowsDated: number;

  @Field(() => Int, { description: 'Since it was sent, or until it ended.' })
  seconds: number;

  @Field(() => String, { nullable: true, description: 'Why it failed: house-stopped, fault.' })
  code: string | null;

  @Field(() => ImportOutcome, { nullable: true })
  outcome: ImportOutcome | null;
}
