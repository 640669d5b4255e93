import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import { DataSource } from 'typeorm';
import { TourJson } from '../../platform/graphql/scalars.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, Me } from '../../platform/sign-in/signed-in.js';
import { TourReader } from './tour.reader.js';
import { TourListQuery } from './tour-list.query.js';
import { TourService } from './tour.service.js';
import { TourConnection, TourPage } from './tour.types.js';

@Resolver()
export class TourResolver {
  constructor(
    private readonly list: TourListQuery,
    private readonly dataSource: DataSource,
    private readonly reader: TourReader,
    private readonly service: TourService,
  ) {}

  @Query(() => TourConnection, { description: 'Tours by their first prep day, the latest first.' })
  tours(
    @Args('first', { type: () => Int, nullable: true }) first: number | null,
    @Args('after', { type: () => String, nullable: true }) after: string | null,
  ): Promise<TourConnection> {
    return this.list.tours(first, after);
  }

  @Query(() => TourPage)
  async tour(@Args('id', { type: () => ID }) id: string): Promise<TourPage> {
    const { version, data } = await this.reader.tour(this.dataSource.manager, id);
    return { id, version, tour: data };
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
    const row = await this.service.save(tour, expectedVersion ?? null, me);
    return { id: row.id, version: row.version, tour: row.data };
  }
}
