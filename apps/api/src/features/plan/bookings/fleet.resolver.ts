import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../../platform/sign-in/signed-in.js';
import { FleetQuery } from './fleet.query.js';
import { FleetModelView, RemedyView } from './fleet.types.js';
import { HoldService } from './hold.service.js';
import { Hold, HoldInput, HoldResult } from './hold.types.js';
import type { BookingRefusal } from '../plan.types.js';

const id = { type: () => ID } as const;
const anyDepot = {
  type: () => String,
  nullable: true,
  description: 'Where the boxes are wanted; any depot where nothing is said.',
} as const;

@Resolver()
export class FleetResolver {
  constructor(
    private readonly queries: FleetQuery,
    private readonly holds: HoldService,
  ) {}

  @AllowEverybody()
  @Query(() => [FleetModelView], { description: 'Every model of box on every day: free, promised, out, short.' })
  fleetCalendar(
    @Args('from') from: string,
    @Args('days', { type: () => Int }) days: number,
    @Args('depot', anyDepot) depot: string | null,
  ): Promise<FleetModelView[]> {
    return this.queries.calendar(from, days, depot ?? null);
  }

  @AllowEverybody()
  @Query(() => [String], { description: 'Depots that boxes belong to.' })
  depots(): Promise<string[]> {
    return this.queries.depots();
  }

  @AllowEverybody()
  @Query(() => [RemedyView], { description: 'What would free a box of a model on a day, the quickest first.' })
  remedies(@Args('model') model: string, @Args('day') day: string, @Args('depot', anyDepot) depot: string | null): Promise<RemedyView[]> {
    return this.queries.remedies(model, day, depot ?? null);
  }

  @AllowEverybody()
  @Query(() => String, { nullable: true, description: 'The first day from which the design of a show can be served for so many days.' })
  firstDayFor(
    @Args('tourId', id) tourId: string,
    @Args('showId', id) showId: string,
    @Args('from') from: string,
    @Args('days', { type: () => Int }) days: number,
  ): Promise<string | null> {
    return this.queries.firstDayFor(tourId, showId, from, days);
  }

  @AllowEverybody()
  @Query(() => [Hold], { description: 'Holds in force, the one that ends first at the top.' })
  openHolds(): Promise<Hold[]> {
    return this.holds.list();
  }

  @Allow('warehouse', 'system')
  @Mutation(() => HoldResult, { description: 'Keeps serials for somebody until the hold ends by itself.' })
  async placeHold(@Args('hold') hold: HoldInput, @Me() me: SignedIn): Promise<Hold | BookingRefusal> {
    const outcome = await this.holds.place(hold, me);
    return outcome.ok ? outcome.value : outcome.error;
  }

  @Allow('warehouse', 'system')
  @Mutation(() => Int, { description: 'Gives a hold back; says how many items were in it.' })
  giveHoldBack(@Args('id', id) holdId: string, @Me() me: SignedIn): Promise<number> {
    return this.holds.giveBack(holdId, me);
  }
}
