import { Args, ID, Int, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { DataSource } from 'typeorm';
import { TourJson } from '../../platform/graphql/scalars.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { RemovalQuery } from './removal.query.js';
import { RemovalService } from './removal.service.js';
import { RemovedShow, RemovedTour, TakenAlong } from './removal.types.js';
import type { TourRow } from './rows.js';
import { TourReader } from './tour.reader.js';
import { TourListQuery } from './tour-list.query.js';
import { TourService } from './tour.service.js';
import { TourConnection, TourPage } from './tour.types.js';

const id = { type: () => ID } as const;
const version = { type: () => Int } as const;
const pageOf = ({ id: tourId, version: at, data }: TourRow): TourPage => ({ id: tourId, version: at, tour: data });

@Resolver(() => TourPage)
export class TourResolver {
  constructor(
    private readonly list: TourListQuery,
    private readonly dataSource: DataSource,
    private readonly reader: TourReader,
    private readonly service: TourService,
    private readonly removed: RemovalQuery,
    private readonly removal: RemovalService,
  ) {}

  @AllowEverybody()
  @Query(() => TourConnection, { description: 'Tours by their first prep day, the latest first.' })
  tours(
    @Args('first', { type: () => Int, nullable: true }) first: number | null,
    @Args('after', { type: () => String, nullable: true }) after: string | null,
  ): Promise<TourConnection> {
    return this.list.tours(first, after);
  }

  @AllowEverybody()
  @Query(() => TourPage)
  async tour(@Args('id', id) tourId: string): Promise<TourPage> {
    return pageOf(await this.reader.tour(this.dataSource.manager, tourId));
  }

  @Allow('system')
  @Mutation(() => TourPage, {
    description:
      'Saves a tour whole, with its shows and hangs; `expectedVersion` is that of the page it was read from, null for a new tour.',
  })
  async saveTour(
    @Args('tour', { type: () => TourJson }) tour: object,
    @Args('expectedVersion', { type: () => Int, nullable: true }) expectedVersion: number | null,
    @Me() me: SignedIn,
  ): Promise<TourPage> {
    return pageOf(await this.service.save(tour, expectedVersion ?? null, me));
  }

  @ResolveField(() => [RemovedShow])
  removedShows(@Parent() { id: tourId }: TourPage): Promise<RemovedShow[]> {
    return this.removed.shows(tourId);
  }

  @AllowEverybody()
  @Query(() => [RemovedTour], { description: 'Tours that were removed and can be put back, the latest first.' })
  removedTours(): Promise<RemovedTour[]> {
    return this.removed.tours();
  }

  @AllowEverybody()
  @Query(() => TakenAlong, { description: 'What the removal of a tour, or of one of its shows, takes along.' })
  takenAlong(
    @Args('tourId', id) tourId: string,
    @Args('showId', { type: () => ID, nullable: true }) showId: string | null,
  ): Promise<TakenAlong> {
    return this.removed.takenAlong(tourId, showId ?? null);
  }

  @Allow('system')
  @Mutation(() => TourPage, {
    description: 'Takes a show off its tour. Its revision in force is superseded, its items are given back; it can be put back.',
  })
  async removeShow(
    @Args('tourId', id) tourId: string,
    @Args('showId', id) showId: string,
    @Args('expectedVersion', version) expectedVersion: number,
    @Me() me: SignedIn,
  ): Promise<TourPage> {
    return pageOf(await this.removal.removeShow(tourId, showId, expectedVersion, me));
  }

  @Allow('system')
  @Mutation(() => TourPage, { description: 'Puts a removed show back on its tour, to be planned and released again.' })
  async putShowBack(
    @Args('tourId', id) tourId: string,
    @Args('showId', id) showId: string,
    @Args('expectedVersion', version) expectedVersion: number,
    @Me() me: SignedIn,
  ): Promise<TourPage> {
    return pageOf(await this.removal.putShowBack(tourId, showId, expectedVersion, me));
  }

  @Allow('system')
  @Mutation(() => TourPage, {
    description:
      'Takes a tour off the list. Revisions in force are superseded, what it holds from today on is given back; it can be put back.',
  })
  async removeTour(
    @Args('tourId', id) tourId: string,
    @Args('expectedVersion', version) expectedVersion: number,
    @Me() me: SignedIn,
  ): Promise<TourPage> {
    return pageOf(await this.removal.removeTour(tourId, expectedVersion, me));
  }

  @Allow('system')
  @Mutation(() => TourPage, { description: 'Puts a removed tour back on the list, its shows to be planned and released again.' })
  async putTourBack(
    @Args('tourId', id) tourId: string,
    @Args('expectedVersion', version) expectedVersion: number,
    @Me() me: SignedIn,
  ): Promise<TourPage> {
    return pageOf(await this.removal.putTourBack(tourId, expectedVersion, me));
  }
}
