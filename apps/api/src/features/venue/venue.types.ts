import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import type { Venue } from '#tour-file';
import { VenueJson } from '../../platform/graphql/scalars.js';

@ObjectType()
export class ShowAtVenue {
  @Field(() => ID)
  tourId: string;

  @Field(() => ID)
  showId: string;
}

@ObjectType()
export class VenueView {
  @Field(() => ID)
  id: string;

  @Field(() => Int)
  version: number;

  @Field(() => VenueJson)
  venue: Venue;

  @Field(() => [ShowAtVenue])
  shows: ShowAtVenue[];
}
