import { Field, ID, Int, ObjectType, createUnionType } from '@nestjs/graphql';
import { AnyJson } from '../../platform/graphql/scalars.js';
import { ChangeView } from './said.types.js';

@ObjectType()
export class CartCheck {
  @Field()
  load: string;

  @Field()
  checkedAt: string;

  @Field()
  checkedBy: string;
}

@ObjectType()
export class TickRemark {
  @Field({ description: 'The key that is ticked.' })
  what: string;

  @Field()
  remark: string;

  @Field()
  by: string;
}

@ObjectType()
export class PlanHead {
  @Field(() => ID)
  id: string;

  /** draft, released or superseded. */
  @Field()
  state: string;

  @Field(() => String, { nullable: true })
  revision: string | null;

  @Field()
  madeAt: string;

  @Field()
  madeBy: string;

  @Field(() => String, { nullable: true })
  releasedAt: string | null;

  @Field(() => String, { nullable: true })
  releasedBy: string | null;

  /** Why it was released although it says stop. */
  @Field(() => String, { nullable: true })
  releasedDespite: string | null;
}

@ObjectType()
export class ShowOfPlan {
  @Field()
  name: string;

  @Field()
  venue: string;

  @Field()
  from: string;

  @Field()
  to: string;

  /** Which show of how many. */
  @Field(() => Int)
  number: number;

  @Field(() => Int)
  of: number;
}

@ObjectType({ description: 'One thing that a plan has to say.' })
export class FindingView {
  @Field()
  code: string;

  /** agrees, look, stop. */
  @Field()
  weight: string;

  @Field()
  section: string;

  @Field()
  subject: string;

  @Field(() => String, { nullable: true })
  date: string | null;

  @Field()
  sentence: string;

  @Field(() => AnyJson, { description: 'All of it as data, also what is neither subject nor number (libs/trade).' })
  fact: object;
}

@ObjectType({ description: 'A plan; its parts are read where they are asked for (`plan-parts.resolver.ts`).' })
export class PlanView extends PlanHead {}

@ObjectType()
export class ShowPage {
  @Field(() => ID)
  tourId: string;

  @Field(() => ID)
  showId: string;

  @Field()
  name: string;

  @Field()
  tourName: string;

  @Field(() => PlanView, { nullable: true })
  released: PlanView | null;

  @Field(() => PlanView, { nullable: true })
  draft: PlanView | null;

  @Field(() => [PlanHead])
  revisions: PlanHead[];
}

@ObjectType()
export class BoxChange {
  @Field()
  hang: string;

  @Field(() => Int)
  position: number;

  @Field(() => String, { nullable: true })
  from: string | null;

  @Field(() => String, { nullable: true })
  to: string | null;
}

@ObjectType()
export class PlanDifferenceView {
  @Field(() => [String])
  sentences: string[];

  @Field(() => [BoxChange])
  boxes: BoxChange[];

  @Field(() => [String])
  hangsChanged: string[];
}

@ObjectType({ description: 'A failed box taken out of a plan: the new draft, and the other plans that counted on the box.' })
export class SwapResult {
  @Field(() => ID)
  draftId: string;

  @Field(() => [String])
  marked: string[];

  @Field(() => PlanDifferenceView)
  difference: PlanDifferenceView;
}

@ObjectType()
export class BookingClash {
  @Field()
  item: string;

  @Field()
  from: string;

  @Field()
  to: string;

  /** Who holds it. */
  @Field()
  tour: string;
}

@ObjectType()
export class BookingRefusal {
  @Field()
  code: string;

  @Field()
  sentence: string;

  @Field(() => [BookingClash])
  clashes: BookingClash[];
}

@ObjectType()
export class StaleRefusal {
  @Field()
  code: string;

  @Field()
  sentence: string;

  @Field(() => [ChangeView])
  changed: ChangeView[];
}

@ObjectType({ description: 'The plan says stop: it is released only with a reason, some stops by the safety officer alone.' })
export class StopRefusal {
  @Field()
  code: string;

  @Field({ description: 'Dates, rated loads or places that are not judged: a reason of the safety officer is wanted.' })
  needsOfficer: boolean;

  @Field()
  sentence: string;

  @Field(() => [FindingView])
  stops: FindingView[];
}

export const ReleaseResult = createUnionType({
  name: 'ReleaseResult',
  types: () => [PlanView, BookingRefusal, StaleRefusal, StopRefusal] as const,
  resolveType: (value: object) =>
    'clashes' in value ? BookingRefusal : 'stops' in value ? StopRefusal : 'sentence' in value ? StaleRefusal : PlanView,
});

@ObjectType()
export class SlotCheck {
  @Field(() => Int)
  slot: number;

  @Field(() => String, { nullable: true })
  expected: string | null;

  @Field(() => String, { nullable: true })
  found: string | null;

  @Field()
  agrees: boolean;

  @Field({ description: 'agrees, empty, read-twice, wrong-box, barred.' })
  code: string;

  @Field(() => AnyJson, { description: 'The same as data: where a wrong box belongs, why a right one must not fly (libs/trade).' })
  fact: object;

  @Field()
  sentence: string;
}

@ObjectType({ description: 'An item of a plan that must not fly as things stand now.' })
export class BarredView {
  @Field(() => ID)
  itemId: string;

  @Field()
  code: string;

  @Field({ description: 'The first day on which it must not.' })
  from: string;

  @Field(() => AnyJson, { description: 'Why, as data: code and figures.' })
  reason: object;

  @Field()
  sentence: string;

  @Field(() => [String], { description: 'Cart loads that hold it, or ride on it.' })
  loads: string[];

  @Field(() => [String], { description: 'Hangs that it is part of.' })
  hangs: string[];
}

@ObjectType({ description: 'A hang that is in the air.' })
export class FlyingView {
  @Field(() => ID)
  hang: string;

  @Field()
  name: string;

  @Field(() => String, { nullable: true, description: 'Who ticked the last step of its way up.' })
  inCharge: string | null;
}

@ObjectType({ description: 'Done on a device that could not know that it was barred meanwhile.' })
export class BarredActView {
  @Field(() => ID)
  id: string;

  @Field(() => ID)
  tourId: string;

  @Field({ description: 'The key of what would have been ticked, or the cart load.' })
  what: string;

  @Field(() => String, { nullable: true, description: 'The hang, of a step of a lift sequence.' })
  hang: string | null;

  @Field()
  sentence: string;

  @Field(() => String, { nullable: true, description: 'What the safety officer, or a deputy, says of it; null: nobody has looked yet.' })
  seen: string | null;
}

@ObjectType()
export class CartCheckResult {
  @Field()
  agrees: boolean;

  @Field(() => [SlotCheck])
  slots: SlotCheck[];

  @Field(() => [BarredView], { description: 'What of this cart load must not fly.' })
  barred: BarredView[];
}
