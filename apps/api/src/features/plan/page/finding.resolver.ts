import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { ToldFinding } from '#pack-plan';
import { FindingView } from '../plan.types.js';
import { NumberView, SubjectView, numberViews, subjectViews } from '../said.types.js';

/** A finding as data beside its sentence. */
@Resolver(() => FindingView)
export class FindingResolver {
  @ResolveField(() => [SubjectView], { description: 'What it is about first.' })
  subjects(@Parent() { fact }: ToldFinding): SubjectView[] {
    return subjectViews(fact.subjects);
  }

  @ResolveField(() => [NumberView], { description: 'Empty where a plan of an earlier version kept its words alone.' })
  numbers(@Parent() { fact }: ToldFinding): NumberView[] {
    return numberViews(fact.numbers);
  }
}
