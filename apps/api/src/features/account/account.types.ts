import { InputType, Field, ID, ObjectType, createUnionType } from '@nestjs/graphql';

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

  @Field({ description: 'warehouse, system or safety' })
  role: string;

  @Field()
  password: string;
}
