import { UuidArgument } from '../../platform/graphql/uuid-argument.js';
import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import { VenueJson } from '../../platform/graphql/scalars.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { VenueService } from './venue.service.js';
import { VenueView } from './venue.types.js';

const id = { type: () => ID } as const;
const anId = { type: () => ID, nullable: true } as const;
const uuid = new UuidArgument();

@Resolver()
export class VenueResolver {
  constructor(private readonly service: VenueService) {}

  @AllowEverybody()
  @Query(() => [VenueView], { description: 'Venues on file, by name.' })
  venues(): Promise<VenueView[]> {
    return this.service.list();
  }

  @AllowEverybody()
  @Query(() => VenueView, { nullable: true, description: 'The venue of a show; nothing where none has been chosen.' })
  venueOfShow(@Args('tourId', id) tourId: string, @Args('showId', id) showId: string): Promise<VenueView | null> {
    return this.service.ofShow(tourId, showId);
  }

  @Allow('system')
  @Mutation(() => VenueView, { description: 'Saves a venue whole; no id and no version for a new one.' })
  saveVenue(
    @Args('id', anId, uuid) venueId: string | null,
    @Args('venue', { type: () => VenueJson }) venue: object,
    @Args('expectedVersion', { type: () => Int, nullable: true }) expectedVersion: number | null,
    @Me() me: SignedIn,
  ): Promise<VenueView> {
    return this.service.save(venueId ?? null, venue, expectedVersion ?? null, me);
  }

  @Allow('system')
  @Mutation(() => Boolean, { description: 'Says at which venue a show is; the words of the tour stay as they are.' })
  async chooseVenue(
    @Args('tourId', id) tourId: string,
    @Args('showId', id) showId: string,
    @Args('venueId', anId, uuid) venueId: string | null,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.choose(tourId, showId, venueId ?? null, me);
    return true;
  }
}
