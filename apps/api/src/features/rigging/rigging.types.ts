import { Field, Float, ID, InputType, ObjectType } from '@nestjs/graphql';

@ObjectType({ description: 'What a load cell showed, beside what was computed.' })
export class LoadReadingView {
  @Field(() => ID)
  id: string;

  @Field()
  hang: string;

  @Field()
  hole: string;

  @Field()
  place: string;

  @Field(() => Float)
  readingKg: number;

  @Field()
  readAt: string;

  @Field()
  readBy: string;

  /** agrees, differs, not judged. */
  @Field()
  verdict: string;

  @Field()
  sentence: string;
}

@ObjectType({ description: 'An inspection after assembly, or a handover, as it was signed.' })
export class SignOffView {
  @Field(() => ID)
  id: string;

  @Field()
  hang: string;

  @Field()
  kind: string;

  @Field()
  name: string;

  @Field()
  remark: string;

  @Field(() => String, { nullable: true, description: 'Of somebody from outside; null: a person of the house.' })
  company: string | null;

  @Field(() => String, { nullable: true })
  role: string | null;

  @Field(() => String, { nullable: true, description: 'Where they stood.' })
  place: string | null;

  @Field()
  signedAt: string;

  @Field()
  signedBy: string;
}

@InputType({ description: 'Somebody from outside who signs: a person of that show, not of the house.' })
export class OutsideInput {
  @Field()
  company: string;

  @Field({ description: 'What they are there, such as rigger of the venue.' })
  role: string;

  @Field({ description: 'Where they stood, such as the grid.' })
  place: string;
}

@InputType({ description: 'The second person of a release, from outside, by name.' })
export class CountersignInput extends OutsideInput {
  @Field()
  name: string;
}

@ObjectType({ description: 'What was measured and signed on a released plan.' })
export class RiggingRecord {
  @Field(() => [LoadReadingView])
  readings: LoadReadingView[];

  @Field(() => [SignOffView])
  signOffs: SignOffView[];
}
