import { Field, Float, Int, ObjectType } from '@nestjs/graphql';

@ObjectType({ description: 'A table of the database.' })
export class TableSize {
  @Field()
  name: string;

  @Field(() => Float)
  bytes: number;

  @Field(() => Float, { description: 'As PostgreSQL last counted them.' })
  rows: number;

  @Field(() => Int, {
    nullable: true,
    description: 'Rows changed in the last thirty days, by the log; null where rows leave no lines there.',
  })
  changedInMonth: number | null;

  @Field(() => Float, { nullable: true, description: 'Bytes more than on the oldest day on file of the last thirty; null where none is.' })
  grownBytes: number | null;
}

@ObjectType({ description: 'How large the database was on a day.' })
export class SizeOfDay {
  @Field()
  day: string;

  @Field(() => Float)
  bytes: number;
}

@ObjectType({ description: 'Plans of a kind since this process started.' })
export class PlanTimes {
  @Field()
  kind: string;

  @Field(() => Int)
  count: number;

  @Field(() => Float, { description: 'On average.' })
  seconds: number;
}

@ObjectType({ description: 'How the house is, for whoever runs it: the figures of /metrics. What is not known is null.' })
export class HouseState {
  @Field()
  version: string;

  @Field({ description: 'When this process started.' })
  upSince: Date;

  @Field(() => Float, { nullable: true })
  databaseBytes: number | null;

  @Field(() => [TableSize], { description: 'The largest first.' })
  tables: TableSize[];

  @Field(() => [SizeOfDay], {
    description: 'Kept by the house once a day: the last month, and the first day of each month before; the newest first.',
  })
  sizes: SizeOfDay[];

  @Field(() => String, { nullable: true, description: 'The day since which growth is told.' })
  grownSince: string | null;

  @Field(() => Int, { nullable: true })
  connections: number | null;

  @Field(() => Int, { nullable: true })
  connectionsLimit: number | null;

  @Field(() => Int, { description: 'That one API or worker may hold.' })
  connectionsOfOne: number;

  @Field(() => Date, { nullable: true })
  lastBackup: Date | null;

  @Field(() => Int)
  jobsWaiting: number;

  @Field(() => Int)
  jobsRunning: number;

  @Field(() => Int, { description: 'Of those on file.' })
  jobsFailed: number;

  @Field(() => Int, { nullable: true, description: 'Seconds that the oldest waiting job has waited.' })
  oldestWaits: number | null;

  @Field(() => [PlanTimes])
  plans: PlanTimes[];

  @Field(() => Int, { description: 'Requests of this process since it started.' })
  requests: number;

  @Field(() => Int, { description: 'Refused at the door: too many at once, too large, not signed in, not allowed.' })
  turnedAway: number;

  @Field(() => Int, { description: 'Faults of ours; each stands in the log of the program.' })
  faults: number;

  @Field(() => Float, { nullable: true, description: 'Of a hundred moments the worst, ms.' })
  eventLoopMs: number | null;

  @Field(() => Float, { nullable: true })
  diskFreeBytes: number | null;

  @Field(() => Int, { nullable: true, description: 'APIs and workers that live.' })
  processes: number | null;
}
