import { Field, Float, ID, ObjectType } from '@nestjs/graphql';

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

  @Field()
  signedAt: string;

  @Field()
  signedBy: string;
}

@ObjectType({ description: 'What was measured and signed on a released plan.' })
export class RiggingRecord {
  @Field(() => [LoadReadingView])
  readings: LoadReadingView[];

  @Field(() => [SignOffView])
  signOffs: SignOffView[];
}
