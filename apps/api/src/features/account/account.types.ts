import { Field, GraphQLISODateTime, ID, InputType, ObjectType, createUnionType } from '@nestjs/graphql';

@ObjectType({ description: 'In the place of a safety officer today; of one depot, one tour, or everywhere.' })
export class DeputyshipView {
  @Field()
  officer: string;

  @Field()
  until: string;

  @Field(() => String, { nullable: true })
  depot: string | null;

  @Field(() => ID, { nullable: true })
  tourId: string | null;
}

@ObjectType()
export class Account {
  @Field(() => ID)
  id: string;

  @Field()
  name: string;

  @Field()
  email: string;

  /** warehouse, system or safety. */
  @Field()
  role: string;

  @Field({ description: 'Signed in with a password that another person gave: only a new one may be chosen.' })
  mustChange: boolean;
}

@ObjectType({ description: 'Somebody on file, with what others who keep people see.' })
export class PersonOnFile {
  @Field(() => ID)
  id: string;

  @Field()
  name: string;

  @Field()
  email: string;

  @Field()
  role: string;

  @Field({ description: 'in: may sign in; new: has a password from another person; out: disabled; left.' })
  state: string;

  @Field({ description: 'A safety officer gave the password under which the own one was chosen.' })
  passwordByOfficer: boolean;

  @Field({ description: 'Devices that are signed in.' })
  sessions: number;

  @Field(() => String, { nullable: true, description: 'Who proposed this person as a safety officer, where nobody has answered yet.' })
  proposedBy: string | null;
}

@ObjectType()
export class SessionView {
  @Field(() => ID)
  id: string;

  @Field(() => GraphQLISODateTime)
  openedAt: Date;

  @Field(() => GraphQLISODateTime)
  seenAt: Date;

  @Field()
  address: string;

  @Field()
  device: string;

  @Field({ description: 'The one that asks.' })
  isThis: boolean;
}

@ObjectType()
export class SignInRefusal {
  @Field()
  sentence: string;
}

export const SignInResult = createUnionType({
  name: 'SignInResult',
  types: () => [Account, SignInRefusal] as const,
  resolveType: (value: object) => ('sentence' in value ? SignInRefusal : Account),
});

@InputType()
export class PersonInput {
  @Field()
  name: string;

  @Field()
  email: string;

  @Field({ description: 'warehouse or system; a safety officer is proposed, and accepted by one' })
  role: string;

  @Field({ description: 'Lets in once, within a day, to choose the own one.' })
  password: string;
}

@InputType({ description: 'The first people of a house: who sets it up, and the safety officer.' })
export class FirstPeopleInput {
  @Field()
  name: string;

  @Field()
  email: string;

  @Field()
  password: string;

  @Field()
  officerName: string;

  @Field()
  officerEmail: string;

  @Field({ description: 'Lets in once, within a day; they choose their own then.' })
  officerPassword: string;
}
