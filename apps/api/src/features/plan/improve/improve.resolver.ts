import { Inject } from '@nestjs/common';
import { Args, Field, ID, Mutation, ObjectType, Query, Resolver, createUnionType } from '@nestjs/graphql';
import { type Words, tell } from '#words';
import { changeViews } from '../stored/change-views.js';
import { WORDS } from '../../../platform/config/words.js';
import { AnyJson } from '../../../platform/graphql/scalars.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../../platform/sign-in/signed-in.js';
import { PlanMade } from '../make/make.types.js';
import { StaleRefusal } from '../plan.types.js';
import { ImproveService } from './improve.service.js';

@ObjectType({ description: 'What became of a list of box moves that was not proved to be the shortest when its plan was made.' })
export class ImprovementView {
  @Field({ description: 'going-on, shorter, proved, not-shorter, overtaken, broken-off' })
  code: string;

  @Field()
  sentence: string;

  @Field(() => AnyJson, { description: 'The same as data: code and figures (libs/trade).' })
  fact: object;
}

const TakenResult = createUnionType({
  name: 'TakenResult',
  types: () => [PlanMade, StaleRefusal] as const,
  resolveType: (value: object) => ('planId' in value ? PlanMade : StaleRefusal),
});

const id = { type: () => ID } as const;

@Resolver()
export class ImproveResolver {
  constructor(
    private readonly service: ImproveService,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  @AllowEverybody()
  @Query(() => ImprovementView, {
    nullable: true,
    description: 'Null where the list was proved to be the shortest when the plan was made.',
  })
  async planImprovement(@Args('planId', id) planId: string): Promise<ImprovementView | null> {
    const fact = await this.service.fact(planId);
    return fact && { code: fact.code, sentence: tell(this.words.improvements, fact), fact };
  }

  @Allow('system', 'warehouse')
  @Mutation(() => TakenResult, { description: 'The shorter list that the house found, as the draft of the show.' })
  async takeImprovement(@Args('planId', id) planId: string, @Me() me: SignedIn): Promise<PlanMade | StaleRefusal> {
    const taken = await this.service.take(planId, me);
    if (taken.ok) return Object.assign(new PlanMade(), { planId: taken.value });
    const sentence = tell(this.words.refusals, { code: 'offer-stale' });
    return { code: 'offer-stale', sentence, changed: changeViews(taken.error, this.words) };
  }
}
