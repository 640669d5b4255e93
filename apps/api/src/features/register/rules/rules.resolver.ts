import { Args, Mutation, Query, Resolver } from '@nestjs/graphql';
import { DataSource } from 'typeorm';
import { ModelJson } from '../../../platform/graphql/scalars.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, AllowEverybody, ByDeputy, Me } from '../../../platform/sign-in/signed-in.js';
import { ExaminationRulesService } from './examination-rules.service.js';
import { RuleEdition } from './rule-edition.types.js';
import { ruleEditions } from './rule-editions.reader.js';

@Resolver()
export class RulesResolver {
  constructor(
    private readonly service: ExaminationRulesService,
    private readonly dataSource: DataSource,
  ) {}

  @AllowEverybody()
  @Query(() => [RuleEdition], { description: 'Changes of examination rules with before and after, who, when and why, newest first.' })
  examinationRuleEditions(): Promise<RuleEdition[]> {
    return ruleEditions(this.dataSource);
  }

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => Boolean, { description: 'Puts a rule in the place of one on file; the one before is kept as an edition.' })
  async changeExaminationRule(
    @Args('was', { type: () => ModelJson, description: 'The rule as it was read.' }) was: object,
    @Args('rule', { type: () => ModelJson }) rule: object,
    @Args('reason', { description: 'Why it holds otherwise: kept with the edition.' }) reason: string,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.change(was, rule, reason, me);
    return true;
  }

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
