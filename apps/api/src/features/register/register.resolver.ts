import { Args, ID, Int, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { AnyJson, KitJson, ModelJson } from '../../platform/graphql/scalars.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, ByDeputy, Me } from '../../platform/sign-in/signed-in.js';
import { CatalogueQuery } from './catalogue.query.js';
import { ItemPageQuery } from './item-page.query.js';
import { RegisterListQuery } from './register-list.query.js';
import { ExaminationRecordConnection } from './records/record.types.js';
import { RecordPageQuery } from './records/record-page.query.js';
import { RegisterService } from './register.service.js';
import { RuleService } from './rule.service.js';
import { CatalogueModel, HistoryConnection, ItemConnection, ItemHead } from './register.types.js';

const optional = { nullable: true, type: () => String } as const;
const optionalInt = { nullable: true, type: () => Int } as const;

@Resolver(() => ItemHead)
export class RegisterResolver {
  constructor(
    private readonly list: RegisterListQuery,
    private readonly page: ItemPageQuery,
    private readonly recordPage: RecordPageQuery,
    private readonly catalogue: CatalogueQuery,
    private readonly service: RegisterService,
    private readonly ruleBook: RuleService,
  ) {}

  @AllowEverybody()
  @Query(() => ItemConnection)
  items(
    @Args('search', optional) search: string | null,
    @Args('kind', optional) kind: string | null,
    @Args('state', optional) state: string | null,
    @Args('model', optional) model: string | null,
    @Args('depot', optional) depot: string | null,
    @Args('serials', { nullable: true, type: () => [ID], description: 'Of these alone, at most 200.' }) serials: string[] | null,
    @Args('sort', { ...optional, description: 'serial, state, last day, kind, model or depot; of equal ones by serial.' })
    sort: string | null,
    @Args('descending', { nullable: true, type: () => Boolean }) descending: boolean | null,
    @Args('first', optionalInt) first: number | null,
    @Args('after', optional) after: string | null,
  ): Promise<ItemConnection> {
    return this.list.items({ search, kind, state, model, depot, serials, sort, descending, first, after });
  }

  @AllowEverybody()
  @Query(() => ItemHead)
  item(@Args('id', { type: () => ID }) id: string): Promise<ItemHead> {
    return this.page.head(id);
  }

  @ResolveField(() => ExaminationRecordConnection, { description: 'Every record, corrected ones too, newest first.' })
  records(
    @Parent() { id }: ItemHead,
    @Args('first', optionalInt) first: number | null,
    @Args('after', optional) after: string | null,
  ): Promise<ExaminationRecordConnection> {
    return this.recordPage.records(id, first, after);
  }

  @ResolveField(() => HistoryConnection, { description: 'What happened to it, newest first.' })
  history(
    @Parent() { id }: ItemHead,
    @Args('first', optionalInt) first: number | null,
    @Args('after', optional) after: string | null,
  ): Promise<HistoryConnection> {
    return this.page.history(id, first, after);
  }

  @AllowEverybody()
  @Query(() => [CatalogueModel])
  catalogueModels(@Args('kind', optional) kind: string | null): Promise<CatalogueModel[]> {
    return this.catalogue.models(kind);
  }

  @AllowEverybody()
  @Query(() => [ModelJson])
  riggingSystems(): Promise<object[]> {
    return this.catalogue.rules('system');
  }

  @AllowEverybody()
  @Query(() => KitJson, { description: 'Examination rules and load rules of the house.' })
  async rules(): Promise<object> {
    return { examinationRules: await this.catalogue.rules('examination'), loadRules: await this.catalogue.rules('load') };
  }

  @Allow('safety')
  @ByDeputy({ item: 'itemId' })
  @Mutation(() => ItemHead)
  async recordExamination(
    @Args('itemId', { type: () => ID }) id: string,
    @Args('examination', { type: () => AnyJson }) examination: object,
    @Args('supersedes', { type: () => ID, nullable: true, description: 'The record that this one corrects.' }) supersedes: string | null,
    @Args('reason', { type: () => String, nullable: true, description: 'Why a record is corrected.' }) reason: string | null,
    @Me() me: SignedIn,
  ): Promise<ItemHead> {
    await this.service.recordExamination(id, examination, supersedes ?? null, reason ?? '', me);
    return this.page.head(id);
  }

  @AllowEverybody()
  @Mutation(() => ItemHead)
  async quarantine(@Args('itemId', { type: () => ID }) id: string, @Args('reason') reason: string, @Me() me: SignedIn): Promise<ItemHead> {
    await this.service.quarantine(id, reason, me);
    return this.page.head(id);
  }

  @Allow('safety')
  @ByDeputy({ item: 'itemId' })
  @Mutation(() => ItemHead)
  async releaseFromQuarantine(
    @Args('itemId', { type: () => ID }) id: string,
    @Args('reason') reason: string,
    @Me() me: SignedIn,
  ): Promise<ItemHead> {
    await this.service.releaseFromQuarantine(id, reason, me);
    return this.page.head(id);
  }

  @AllowEverybody()
  @Mutation(() => ItemHead, { description: 'A shock load, an overload, an accident: blocks the item until it is examined.' })
  async recordIncident(
    @Args('itemId', { type: () => ID }) id: string,
    @Args('on') on: string,
    @Args('what') what: string,
    @Me() me: SignedIn,
  ): Promise<ItemHead> {
    await this.service.recordIncident(id, on, what, me);
    return this.page.head(id);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => ItemHead, { description: 'The boxes of a cart as they stand, top first.' })
  async setStack(
    @Args('cart', { type: () => ID }) cart: string,
    @Args('serials', { type: () => [String] }) serials: string[],
    @Me() me: SignedIn,
  ): Promise<ItemHead> {
    await this.service.setStack(cart, serials, me);
    return this.page.head(cart);
  }

  @Allow('system', 'safety')
  @Mutation(() => Boolean, { description: 'Writes a rigging system from the maker’s manual; it then waits for approval.' })
  async saveRiggingSystem(
    @Args('system', { type: () => ModelJson }) system: object,
    @Args('was', {
      type: () => ModelJson,
      nullable: true,
      description: 'As it was read where it is on file already; what others wrote since stays.',
    })
    was: object | null,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.ruleBook.saveSystem(system, was, me);
    return true;
  }

  @Allow('system', 'safety')
  @Mutation(() => [String], {
    description: 'Writes a load regime: factors and shares with their sources. Gives what of it waits for the safety officer.',
  })
  async saveLoadRule(
    @Args('rule', { type: () => ModelJson }) rule: object,
    @Args('was', {
      type: () => ModelJson,
      nullable: true,
      description: 'As it was read where it is on file already; what others wrote since stays.',
    })
    was: object | null,
    @Args('reason', { type: () => String, nullable: true, description: 'Why the safety officer lets more pass than before.' })
    reason: string | null,
    @Me() me: SignedIn,
  ): Promise<string[]> {
    return [...(await this.ruleBook.saveLoadRule(rule, was, reason ?? '', me))];
  }

  @Allow('safety')
  @ByDeputy('house')
  @Mutation(() => Boolean)
  async approveRiggingSystem(@Args('id', { type: () => ID }) id: string, @Me() me: SignedIn): Promise<boolean> {
    await this.ruleBook.approveSystem(id, me);
    return true;
  }
}
