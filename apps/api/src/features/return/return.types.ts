import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import type { LastSeen } from '#pack-plan';
import { AnyJson } from '../../platform/graphql/scalars.js';

@ObjectType()
export class BackView {
  @Field({ description: 'ISO 8601.' })
  moment: string;

  @Field()
  by: string;
}

@ObjectType()
export class LastSeenView {
  @Field({ description: 'ISO 8601.' })
  moment: string;

  @Field()
  by: string;

  @Field(() => String, { nullable: true, description: 'The cart that was seen, where it was not the thing itself.' })
  with: string | null;

  @Field(() => AnyJson, { description: 'A row of a truck, or what was put on record, as data (libs/pack-plan/return).' })
  place: LastSeen['place'];
}

@ObjectType({ description: 'A thing that travelled with a show: whether it is back, and if not, where it was seen last and by whom.' })
export class ReturnPieceView {
  @Field(() => ID)
  id: string;

  @Field()
  kind: string;

  @Field()
  model: string;

  @Field(() => String, { nullable: true, description: 'Cart that it stands on, as the register has it.' })
  cart: string | null;

  @Field(() => Int, { nullable: true, description: 'Where on that cart, 1 at the top.' })
  slot: number | null;

  @Field(() => String, { nullable: true, description: 'Cart load that it flew in, or that the cart carried.' })
  load: string | null;

  @Field(() => BackView, { nullable: true })
  back: BackView | null;

  @Field(() => LastSeenView, { nullable: true })
  seen: LastSeenView | null;
}

@ObjectType()
export class FaultView {
  @Field({ description: 'rigging, sound or looks.' })
  kind: string;

  @Field()
  what: string;

  @Field({ description: 'out, bottom or flies.' })
  then: string;

  @Field(() => Int, { nullable: true, description: 'Of a batch: how many pieces.' })
  pieces: number | null;

  @Field({ description: 'ISO 8601.' })
  moment: string;

  @Field()
  by: string;
}

@ObjectType({ description: 'Where an item flies by a plan in force.' })
export class FliesInView {
  @Field(() => ID)
  tourId: string;

  @Field(() => ID)
  showId: string;

  @Field()
  show: string;

  @Field()
  from: string;

  @Field()
  load: string;

  @Field(() => String, { nullable: true })
  cart: string | null;
}

@ObjectType({ description: 'An item that somebody finds a fault of: what is known of it, and what else there is.' })
export class FaultSheet {
  @Field(() => ID)
  id: string;

  @Field()
  kind: string;

  @Field()
  model: string;

  @Field()
  state: string;

  @Field(() => Int, { nullable: true, description: 'Of a batch.' })
  count: number | null;

  @Field(() => [FaultView], { description: 'Newest first.' })
  faults: FaultView[];

  @Field(() => [FliesInView])
  fliesIn: FliesInView[];

  @Field(() => ID, { nullable: true, description: 'Another of its model in service that no plan in force flies.' })
  spare: string | null;
}

@ObjectType({ description: 'A fault that nothing has answered yet, of what a plan uses.' })
export class OpenFaultView extends FaultView {
  @Field(() => ID)
  item: string;
}
