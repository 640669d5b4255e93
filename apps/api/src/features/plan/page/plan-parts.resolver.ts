import { Inject } from '@nestjs/common';
import { Args, Int, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { DataSource } from 'typeorm';
import type { HangResult, HardwareResult, PackPlan, TruckResultOne } from '#pack-plan';
import type { Words } from '#words';
import {
  CartsJson,
  DueJson,
  HangJson,
  HardwareJson,
  PackPlanJson,
  PicksHeadJson,
  TruckJson,
  TrucksHeadJson,
} from '../../../platform/graphql/scalars.js';
import { WORDS } from '../../../platform/config/words.js';
import { barredActsOfPlan } from '../stored/barred-act.reader.js';
import { flyingHangs } from '../stored/flying.reader.js';
import { BarredReader } from '../stored/barred.reader.js';
import { barredView } from '../stored/barred-view.js';
import { changeViews } from '../stored/change-views.js';
import { PlanFreshness } from '../stored/plan-freshness.reader.js';
import { PlanPartsQuery } from './plan-parts.query.js';
import { BarredActView, FlyingView, BarredView, CartCheck, FindingView, PlanView, ShowOfPlan, TickRemark } from '../plan.types.js';
import { ChangeView } from '../said.types.js';

const named = { type: () => String } as const;

/** The fields of a plan: each reads its own part, and only where it is asked for. */
@Resolver(() => PlanView)
export class PlanPartsResolver {
  constructor(
    private readonly parts: PlanPartsQuery,
    private readonly freshness: PlanFreshness,
    private readonly gate: BarredReader,
    private readonly dataSource: DataSource,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  @ResolveField(() => [ChangeView], { description: 'Inputs that changed since it was made; empty when it is not stale.' })
  async changed(@Parent() { id, state }: PlanView): Promise<ChangeView[]> {
    if (state === 'superseded') return [];
    return changeViews((await this.freshness.changed([id])).get(id) ?? [], this.words);
  }

  @ResolveField(() => [BarredView], { description: 'What of it must not fly as things stand now, whatever was so when it was released.' })
  async barred(@Parent() { id, state }: PlanView): Promise<BarredView[]> {
    if (state === 'superseded') return [];
    return (await this.gate.of(this.dataSource.manager, id)).map((each) => barredView(each, this.words));
  }

  @ResolveField(() => [FlyingView], { description: 'Hangs in the air: from the first step up to the last hold of the way down.' })
  flying(@Parent() { id }: PlanView): Promise<FlyingView[]> {
    return flyingHangs(this.dataSource.manager, [id]);
  }

  @ResolveField(() => [BarredActView], {
    description: 'What was done at its show although it was barred meanwhile, by whichever plan; no tick, no signature.',
  })
  async doneAlthoughBarred(@Parent() { id }: PlanView): Promise<BarredActView[]> {
    return [...(await barredActsOfPlan(this.dataSource.manager, id, this.words))];
  }

  @ResolveField(() => ShowOfPlan)
  async show(@Parent() { id }: PlanView): Promise<ShowOfPlan> {
    return (await this.parts.head(id)).show;
  }

  @ResolveField(() => Int, { description: 'Findings that say stop.' })
  stops(@Parent() { id }: PlanView): Promise<number> {
    return this.parts.countOf(id, 'stop');
  }

  @ResolveField(() => Int, { description: 'Findings to look at.' })
  looks(@Parent() { id }: PlanView): Promise<number> {
    return this.parts.countOf(id, 'look');
  }

  @ResolveField(() => [FindingView])
  findings(@Parent() { id }: PlanView): Promise<readonly FindingView[]> {
    return this.parts.findings(id);
  }

  @ResolveField(() => CartsJson)
  carts(@Parent() { id }: PlanView): Promise<PackPlan['carts']> {
    return this.parts.carts(id);
  }

  @ResolveField(() => PicksHeadJson, { description: 'The load rule and the caution of the picks.' })
  picks(@Parent() { id }: PlanView): Promise<object> {
    return this.parts.picks(id);
  }

  @ResolveField(() => [String], { description: 'Its hangs, in the order of the show.' })
  hangs(@Parent() { id }: PlanView): Promise<string[]> {
    return this.parts.hangs(id);
  }

  @ResolveField(() => HangJson)
  hang(@Parent() { id }: PlanView, @Args('hang', named) hang: string): Promise<HangResult> {
    return this.parts.hang(id, hang);
  }

  @ResolveField(() => HardwareJson)
  hardware(@Parent() { id }: PlanView): Promise<HardwareResult> {
    return this.parts.hardware(id);
  }

  @ResolveField(() => TrucksHeadJson, { description: 'What holds for all trucks: bound, dock order, notes, what was left over.' })
  truckHead(@Parent() { id }: PlanView): Promise<object> {
    return this.parts.truckHead(id);
  }

  @ResolveField(() => [String], { description: 'Its trucks.' })
  trucks(@Parent() { id }: PlanView): Promise<string[]> {
    return this.parts.trucks(id);
  }

  @ResolveField(() => TruckJson)
  truck(@Parent() { id }: PlanView, @Args('truck', named) truck: string): Promise<TruckResultOne> {
    return this.parts.truck(id, truck);
  }

  @ResolveField(() => DueJson)
  due(@Parent() { id }: PlanView): Promise<PackPlan['due']> {
    return this.parts.due(id);
  }

  @ResolveField(() => PackPlanJson, { description: 'All of it, for export and for printing all sheets.' })
  plan(@Parent() { id }: PlanView): Promise<PackPlan> {
    return this.parts.whole(id);
  }

  @ResolveField(() => [CartCheck])
  cartChecks(@Parent() { id }: PlanView): Promise<CartCheck[]> {
    return this.parts.cartChecks(id);
  }

  @ResolveField(() => [String], { description: 'What has been ticked off: rows of trucks, steps, box moves.' })
  ticks(@Parent() { id }: PlanView): Promise<string[]> {
    return this.parts.ticks(id);
  }
  @ResolveField(() => [TickRemark], {
    description: 'What was said with a tick: who did it together, or that it was entered late from paper.',
  })
  tickRemarks(@Parent() { id }: PlanView): Promise<TickRemark[]> {
    return this.parts.tickRemarks(id);
  }
}
