import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, ByDeputy, Me } from '../../platform/sign-in/signed-in.js';
import { PlaceService } from './place.service.js';
import { TourPlaces } from './place.types.js';

@Resolver()
export class PlaceResolver {
  constructor(private readonly service: PlaceService) {}

  @AllowEverybody()
  @Query(() => TourPlaces, { description: 'The places that a tour visits, and whose examination rules hold there.' })
  tourPlaces(@Args('tourId', { type: () => ID }) tourId: string): Promise<TourPlaces> {
    return this.service.places(tourId);
  }

  @Allow('safety')
  @ByDeputy({ tour: 'tourId' })
  @Mutation(() => TourPlaces, {
    description: 'A place without rules on file is judged on this tour by those of another, with a reason; null takes the answer back.',
  })
  answerPlace(
    @Args('tourId', { type: () => ID }) tourId: string,
    @Args('place') place: string,
    @Args('rulesOf', { type: () => String, nullable: true }) rulesOf: string | null,
    @Args('reason') reason: string,
    @Me() me: SignedIn,
  ): Promise<TourPlaces> {
    return this.service.answer(tourId, place, rulesOf ?? null, reason, me);
  }
}
