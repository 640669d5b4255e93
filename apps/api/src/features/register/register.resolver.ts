import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import { AnyJson, KitJson, ModelJson } from '../../platform/graphql/scalars.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, Me } from '../../platform/sign-in/signed-in.js';
import { RegisterQueries } from './register.queries.js';
import { RegisterService } from './register.service.js';
import { CatalogueModel, ItemConnection, ItemPage, ItemSummary } from './register.types.js';

const optional = { nullable: true, type: () => String } as const;

@Resolver()
export class RegisterResolver {
  constructor(
    private readonly queries: RegisterQueries,
    private readonly service: RegisterService,
  ) {}

  @Query(() => ItemConnection)
  items(
    @Args('search', optional) search: string | null,
    @Args('kind', optional) kind: string | null,
    @Args('state', optional) state: string | null,
    @Args('model', optional) model: string | null,
    @Args('first', { nullable: true, type: () => Int }) first: number | null,
    @Args('after', optional) after: string | null,
  ): Promise<ItemConnection> {
    return this.queries.items({ search, kind, state, model, first, after });
  }

  @Query(() => ItemPage)
  item(@Args('id', { type: () => ID }) id: string): Promise<ItemPage> {
    return this.queries.item(id);
  }

  @Query(() => [ItemSummary], { description: 'Everything that is examined, what may not be used first, then what runs out first.' })
  examinedItems(): Promise<ItemSummary[]> {
    return this.queries.examined();
  }

  @Query(() => [CatalogueModel])
  catalogueModels(@Args('kind', optional) kind: string | null): Promise<CatalogueModel[]> {
    return this.queries.models(kind);
  }

  @Query(() => [ModelJson])
  riggingSystems(): Promise<object[]> {
    return this.queries.rules('system');
  }

  @Query(() => KitJson, { description: 'Examination rules and load rules of the house.' })
  async rules(): Promise<object> {
    return { examinationRules: await this.queries.rules('examination'), loadRules: await this.queries.rules('load') };
  }

  @Allow('safety')
  @Mutation(() => ItemPage)
  async recordExamination(
    @Args('itemId', { type: () => ID }) id: string,
    @Args('examination', { type: () => AnyJson }) examination: object,
    @Args('supersedes', { type: () => ID, nullable: true, description: 'The record that this one corrects.' }) supersedes: string | null,
    @Me() me: SignedIn,
  ): Promise<ItemPage> {
    await this.service.recordExamination(id, examination, supersedes ?? null, me);
    return this.queries.item(id);
  }

  @Mutation(() => ItemPage)
  async quarantine(@Args('itemId', { type: () => ID }) id: string, @Args('reason') reason: string, @Me() me: SignedIn): Promise<ItemPage> {
    await this.service.quarantine(id, reason, me);
    return this.queries.item(id);
  }

  @Allow('safety')
  @Mutation(() => ItemPage)
  async releaseFromQuarantine(
    @Args('itemId', { type: () => ID }) id: string,
    @Args('reason') reason: string,
    @Me() me: SignedIn,
  ): Promise<ItemPage> {
    await this.service.releaseFromQuarantine(id, reason, me);
    return this.queries.item(id);
  }

  @Mutation(() => ItemPage, { description: 'A shock load, an overload, an accident: blocks the item until it is examined.' })
  async recordIncident(
    @Args('itemId', { type: () => ID }) id: string,
    @Args('on') on: string,
    @Args('what') what: string,
    @Me() me: SignedIn,
  ): Promise<ItemPage> {
    await this.service.recordIncident(id, on, what, me);
    return this.queries.item(id);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => ItemPage, { description: 'The boxes of a cart as they stand, top first.' })
  async setStack(
    @Args('cart', { type: () => ID }) cart: string,
    @Args('serials', { type: () => [String] }) serials: string[],
    @Me() me: SignedIn,
  ): Promise<ItemPage> {
    await this.service.setStack(cart, serials, me);
    return this.queries.item(cart);
  }

  @Allow('system', 'safety')
  @Mutation(() => Boolean, { description: 'Writes a rigging system from the maker’s manual; it then waits for approval.' })
  async saveRiggingSystem(@Args('system', { type: () => ModelJson }) system: object, @Me() me: SignedIn): Promise<boolean> {
    await this.service.saveSystem(system, me);
    return true;
  }

  @Allow('system', 'safety')
  @Mutation(() => Boolean, { description: 'Writes a load regime: factors and shares with their sources.' })
  async saveLoadRule(@Args('rule', { type: () => ModelJson }) rule: object, @Me() me: SignedIn): Promise<boolean> {
    await this.service.saveLoadRule(rule, me);
    return true;
  }

  @Allow('safety')
  @Mutation(() => Boolean)
  async approveRiggingSystem(@Args('id', { type: () => ID }) id: string, @Me() me: SignedIn): Promise<boolean> {
    await this.service.approveSystem(id, me);
    return true;
  }
}
