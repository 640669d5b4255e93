import { Inject } from '@nestjs/common';
import { Args, Field, ID, Int, Mutation, ObjectType, Query, Resolver } from '@nestjs/graphql';
import type { BetweenShows, HouseAnswer, WorkList } from '#pack-plan';
import { type Words, tell } from '#words';
import { WORDS } from '../../../platform/config/words.js';
import { AnyJson, BetweenShowsJson, WorkListJson } from '../../../platform/graphql/scalars.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../../platform/sign-in/signed-in.js';
import { FloorCodeReader } from './floor-code.reader.js';
import { WorkService } from './work.service.js';

@ObjectType()
export class BetweenShowsView {
  @Field()
  from: string;

  @Field()
  to: string;

  @Field(() => BetweenShowsJson)
  what: BetweenShows;
}

@ObjectType({ description: 'What a code is that was read on the floor.' })
class FloorCodeView {
  @Field(() => ID)
  id: string;

  @Field()
  kind: string;

  @Field()
  model: string;

  @Field(() => Int, { nullable: true, description: 'Of a lot.' })
  count: number | null;

  @Field(() => AnyJson, { nullable: true, description: 'Why it may not travel with this show, as data (libs/trade).' })
  whyNot: object | null;

  @Field(() => [String], { description: 'Serials that the design of the show wants by name.' })
  wantedSerials: readonly string[];
}

@ObjectType({ description: 'Why a box or a cart stands where a plan puts it, and not another.' })
export class PlaceReasonView {
  @Field()
  code: string;

  @Field()
  sentence: string;

  @Field(() => AnyJson, { description: 'The same as data: code and figures (libs/trade).' })
  fact: object;
}

const id = { type: () => ID } as const;

@Resolver()
export class WorkResolver {
  constructor(
    private readonly service: WorkService,
    private readonly codes: FloorCodeReader,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  @AllowEverybody()
  @Query(() => PlaceReasonView, { description: 'The box or the cart barred, and the plan asked for again: what comes out worse.' })
  async whyHere(
    @Args('planId', id) planId: string,
    @Args('load') load: string,
    @Args('slot', { type: () => Int, nullable: true, description: 'From 1 at the top; none: the cart.' }) slot: number | null,
  ): Promise<PlaceReasonView> {
    const fact = await this.service.why(planId, { load, slot: slot ?? null });
    return { code: fact.code, sentence: tell(this.words.places, fact), fact };
  }

  @AllowEverybody()
  @Query(() => WorkListJson, { description: 'What is left to do for a plan on the floor as it now stands.' })
  workList(@Args('planId', id) planId: string): Promise<WorkList> {
    return this.service.list(planId);
  }

  @AllowEverybody()
  @Query(() => FloorCodeView, { nullable: true, description: 'What was read, where it is on file: a serial, or the address on a label.' })
  floorCode(@Args('planId', id) planId: string, @Args('code') code: string): Promise<HouseAnswer | null> {
    return this.codes.codeOf(planId, code);
  }

  @AllowEverybody()
  @Query(() => [BetweenShowsView], { description: 'What happens to the carts between the shows of a tour.' })
  async betweenShows(@Args('tourId', id) tourId: string): Promise<BetweenShowsView[]> {
    return [...(await this.service.between(tourId))];
  }

  @Allow('warehouse', 'system')
  @Mutation(() => WorkListJson, { description: 'One box move of the list, carried out.' })
  doMove(
    @Args('planId', id) planId: string,
    @Args('box') box: string,
    @Args('from') from: string,
    @Args('to') to: string,
    @Me() me: SignedIn,
  ): Promise<WorkList> {
    return this.service.doMove(planId, { box, from, to }, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => WorkListJson, {
    description: 'A box move taken back, as long as nothing stands on it: the box stands where it came from.',
  })
  undoMove(
    @Args('planId', id) planId: string,
    @Args('box') box: string,
    @Args('from', { description: 'Where the move took it from, and where it stands again.' }) from: string,
    @Args('to') to: string,
    @Me() me: SignedIn,
  ): Promise<WorkList> {
    return this.service.undoMove(planId, { box, from, to }, me);
  }
}
