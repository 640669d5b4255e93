import { Field, ID, InputType, Int, ObjectType } from '@nestjs/graphql';
import type { SeasonAnswer, SeenItem } from '#inspection-calendar';
import { SeasonJson, SeenItemsJson } from '../../platform/graphql/scalars.js';

@ObjectType()
export class VisitLine {
  @Field(() => ID)
  itemId: string;

  @Field(() => ID)
  examinationId: string;

  @Field()
  outcome: string;

  @Field(() => String, { nullable: true })
  report: string | null;

  @Field(() => String, { nullable: true })
  remark: string | null;
}

@ObjectType()
export class VisitItem {
  @Field(() => ID)
  id: string;

  @Field()
  kind: string;

  @Field()
  model: string;

  /** Where it is now, in words. */
  @Field()
  place: string;

  @Field(() => [String], { description: 'Intervals that a pass satisfies, as periods of ISO 8601.' })
  intervals: string[];

  @Field(() => [String], { description: 'The examination rules that ask for them: jurisdiction and title.' })
  rules: string[];
}

@ObjectType({ description: 'How far an item is by a rule that counts lifts or hours.' })
export class CountedUse {
  @Field(() => ID)
  itemId: string;

  @Field()
  kind: string;

  @Field()
  model: string;

  @Field()
  depot: string;

  @Field()
  jurisdiction: string;

  @Field({ description: 'lifts or hours' })
  basis: string;

  @Field(() => Int, { description: 'After so many it is due.' })
  every: number;

  @Field(() => String, { nullable: true, description: 'Day of the last passed record; counted from the day after. Null: from the start.' })
  since: string | null;

  @Field(() => Int, { nullable: true, description: 'Lifts as they were signed off here; null for hours, which nobody tells.' })
  count: number | null;

  @Field()
  isDue: boolean;
}

@ObjectType()
export class VisitView {
  @Field(() => ID)
  id: string;

  @Field()
  onDay: string;

  @Field(() => String, { nullable: true })
  depot: string | null;

  @Field(() => ID, { nullable: true })
  tourId: string | null;

  @Field(() => ID, { nullable: true })
  showId: string | null;

  @Field({ description: 'The depot, or tour, show and venue, by name.' })
  placeName: string;

  @Field({ description: 'possible, agreed or cancelled' })
  state: string;

  @Field(() => String, { nullable: true })
  remark: string | null;

  @Field(() => SeenItemsJson, { nullable: true })
  list: readonly SeenItem[] | null;

  @Field(() => Int, { description: 'Lines whose result has been entered.' })
  entered: number;

  @Field(() => Int)
  version: number;
}

@ObjectType()
export class VisitList {
  @Field(() => VisitView)
  visit: VisitView;

  @Field(() => [VisitItem])
  items: VisitItem[];

  @Field(() => [VisitLine])
  lines: VisitLine[];
}

@ObjectType()
export class SeasonItemName {
  @Field(() => ID)
  id: string;

  @Field()
  kind: string;

  @Field()
  model: string;
}

@ObjectType()
export class VisitSeason {
  @Field(() => SeasonJson)
  answer: SeasonAnswer;

  @Field(() => SeasonJson, { nullable: true, description: 'The same without the visits that were asked about.' })
  without: SeasonAnswer | null;

  @Field(() => [SeasonItemName])
  names: SeasonItemName[];
}

@InputType()
export class PossibleDayInput {
  @Field()
  onDay: string;

  @Field(() => String, { nullable: true })
  depot?: string | null;

  @Field(() => ID, { nullable: true })
  tourId?: string | null;

  @Field(() => ID, { nullable: true })
  showId?: string | null;

  @Field(() => String, { nullable: true })
  remark?: string | null;
}

@InputType()
export class VisitResultInput {
  @Field(() => ID)
  itemId: string;

  @Field({ description: 'pass or fail' })
  outcome: string;

  @Field(() => String, { nullable: true })
  report?: string | null;

  @Field(() => String, { nullable: true })
  remark?: string | null;

  @Field(() => String, { nullable: true })
  nextLatestOn?: string | null;

  @Field(() => String, { nullable: true })
  defectBy?: string | null;
}
