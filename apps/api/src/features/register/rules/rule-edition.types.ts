import { Field, ID, ObjectType } from '@nestjs/graphql';
import { ModelJson } from '../../../platform/graphql/scalars.js';

@ObjectType({ description: 'An examination rule before and after a change.' })
export class RuleEdition {
  @Field(() => ID)
  id: string;

  @Field(() => ModelJson, { nullable: true, description: 'null: it came on file.' })
  was: object | null;

  @Field(() => ModelJson, { nullable: true, description: 'null: it was taken out.' })
  wanted: object | null;

  @Field(() => String, { nullable: true })
  reason: string | null;

  @Field()
  madeBy: string;

  @Field()
  madeAt: string;
}
