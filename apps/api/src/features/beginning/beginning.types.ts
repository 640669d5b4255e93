import { Field, Int, ObjectType } from '@nestjs/graphql';

@ObjectType()
export class CountOfKind {
  @Field()
  kind: string;

  @Field(() => Int)
  count: number;
}

@ObjectType({ description: 'What a house has of what a first plan is made from.' })
export class Beginning {
  @Field(() => Int, { description: 'Safety officers who have signed in with a password of their own.' })
  officers: number;

  @Field(() => Int)
  warehouse: number;

  @Field(() => Int)
  examinationRules: number;

  @Field(() => Int)
  loadRules: number;

  @Field(() => Int)
  systems: number;

  @Field(() => Int)
  approvedSystems: number;

  @Field(() => [CountOfKind], { description: 'Models by their kind.' })
  models: CountOfKind[];

  @Field(() => [CountOfKind], { description: 'Items by their kind.' })
  items: CountOfKind[];

  @Field(() => Int, { description: 'What waits for the safety officer; nothing of it is used until it is accepted.' })
  waiting: number;

  @Field(() => Int)
  tours: number;

  @Field(() => Int, { description: 'Hangs with boxes, of all tours.' })
  hangs: number;

  @Field(() => Int)
  plans: number;
}
