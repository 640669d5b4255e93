import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, Me } from '../../platform/sign-in/signed-in.js';
import { SearchService } from './search.service.js';
import { Search } from './search.types.js';

const id = { type: () => ID };

@Resolver()
export class SearchResolver {
  constructor(private readonly service: SearchService) {}

  @Query(() => Search, { nullable: true, description: 'The newest longer search of a show, with its progress.' })
  latestSearch(@Args('tourId', id) tourId: string, @Args('showId', id) showId: string): Promise<Search | null> {
    return this.service.latest(tourId, showId);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => Search, { description: 'Looks longer for shorter truck loads; a search that is going already is given back.' })
  startSearch(@Args('tourId', id) tourId: string, @Args('showId', id) showId: string, @Me() me: SignedIn): Promise<Search> {
    return this.service.start(tourId, showId, me);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => Search)
  stopSearch(@Args('searchId', id) searchId: string, @Me() me: SignedIn): Promise<Search> {
    return this.service.stop(searchId, me);
  }
}
