import { Args, Mutation, Resolver } from '@nestjs/graphql';
import { ModelJson } from '../../../platform/graphql/scalars.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, ByDeputy, Me } from '../../../platform/sign-in/signed-in.js';
import { ExaminationRulesService } from './examination-rules.service.js';

@Resolver()
export class RulesResolver {
  constructor(private readonly service: ExaminationRulesService) {}

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => Boolean, {
    description: 'Puts examination rules on file, all or none: from a set with their sources, or one of the house.',
  })
  async addExaminationRules(@Args('rules', { type: () => [ModelJson] }) rules: object[], @Me() me: SignedIn): Promise<boolean> {
    await this.service.add(rules, me);
    return true;
  }

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => Boolean, {
    description: 'Takes an examination rule out; items that only it concerns are judged by failures, events and defects alone.',
  })
  async removeExaminationRule(
    @Args('rule', { type: () => ModelJson }) rule: object,
    @Args('reason', { description: 'Why it no longer holds: kept with the edition.' }) reason: string,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.remove(rule, reason, me);
    return true;
  }
}
