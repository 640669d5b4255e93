import { Args, ID, Int, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { CountService } from './count.service.js';
import { CountInput, CountRefusal, CountResult, CountSheet } from './count.types.js';

const id = { type: () => ID } as const;
const whole = { type: () => Int } as const;

@Resolver()
export class CountResolver {
  constructor(private readonly service: CountService) {}

  @AllowEverybody()
  @Query(() => CountSheet, { description: 'What to count when a show comes back, what was counted, and what it taught.' })
  countSheet(@Args('tourId', id) tourId: string, @Args('showId', id) showId: string): Promise<CountSheet> {
    return this.service.sheet(tourId, showId);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => CountResult, {
    description: 'Counts at return of one or more shows, all lines or none. Gives the sheet of the last show.',
  })
  async recordCounts(
    @Args('tourId', id) tourId: string,
    @Args('showIds', { type: () => [ID] }) showIds: string[],
    @Args('lines', { type: () => [CountInput] }) lines: CountInput[],
    @Me() me: SignedIn,
  ): Promise<CountSheet | CountRefusal> {
    const outcome = await this.service.record(tourId, showIds, lines, me);
    return outcome.ok ? this.service.sheet(tourId, showIds.at(-1)!) : outcome.error;
  }

  @Allow('warehouse', 'system')
  @Mutation(() => CountSheet, { description: 'A count in the place of one that was wrong; the wrong one stays on record.' })
  async correctCount(
    @Args('id', id) countId: string,
    @Args('sent', whole) sent: number,
    @Args('returned', whole) returned: number,
    @Args('damaged', whole) damaged: number,
    @Args('reason') reason: string,
    @Me() me: SignedIn,
  ): Promise<CountSheet> {
    const { tourId, showId } = await this.service.correct(countId, { sent, returned, damaged }, reason, me);
    return this.service.sheet(tourId, showId);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => CountSheet, { description: 'Takes a count back, by a record that says why.' })
  async takeCountBack(@Args('id', id) countId: string, @Args('reason') reason: string, @Me() me: SignedIn): Promise<CountSheet> {
    const { tourId, showId } = await this.service.correct(countId, null, reason, me);
    return this.service.sheet(tourId, showId);
  }
}
