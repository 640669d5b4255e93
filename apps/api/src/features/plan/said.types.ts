import { Field, Float, ID, ObjectType } from '@nestjs/graphql';
import type { InputChange, Numbers, Subject, Subjects } from '#trade';
import { AnyJson } from '../../platform/graphql/scalars.js';

@ObjectType({ description: 'What something that is said is about; several of one role stand one after another.' })
export class SubjectView {
  @Field({ description: 'What it is to the code, for example `hoist` or `box`.' })
  role: string;

  @Field({ description: 'hang, joint, pick, truck, axle, item, day ...' })
  kind: string;

  @Field(() => ID, { nullable: true, description: 'Where the kind has ids.' })
  id: string | null;

  @Field(() => AnyJson, { description: 'All of it: a joint has its hang and position, an axle its truck (libs/trade/subject).' })
  place: object;
}

@ObjectType({ description: 'A figure of something that is said, the unit last in its name.' })
export class NumberView {
  @Field()
  name: string;

  @Field(() => [Float], { description: 'One, several where it is a list, none where none is on file.' })
  values: number[];
}

@ObjectType({ description: 'An input that is no longer as it was when a plan was made.' })
export class ChangeView {
  @Field({ description: 'changed, new, gone, floor-differs; `more`: so many others.' })
  code: string;

  @Field(() => [SubjectView])
  subjects: SubjectView[];

  @Field(() => [NumberView])
  numbers: NumberView[];

  @Field()
  sentence: string;
}

export const subjectViews = (subjects: Subjects): SubjectView[] =>
  Object.entries(subjects).flatMap(([role, each]) =>
    (each === null ? [] : 'kind' in each ? [each] : each).map((one) => subjectView(role, one)),
  );

const subjectView = (role: string, subject: Subject): SubjectView => ({
  role,
  kind: subject.kind,
  id: 'id' in subject ? subject.id : null,
  place: subject,
});

export const numberViews = (numbers: Numbers): NumberView[] =>
  Object.entries(numbers).map(([name, each]) => ({ name, values: each === null ? [] : typeof each === 'number' ? [each] : [...each] }));

/** A change without its sentence. */
export const changeFact = (change: InputChange): Omit<ChangeView, 'sentence'> => ({
  code: change.code,
  subjects:
    'part' in change ? [{ role: 'part', kind: change.part.code, id: 'id' in change.part ? change.part.id : null, place: change.part }] : [],
  numbers: [],
});
