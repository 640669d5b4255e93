import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import { BadInputError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { Job, viewOf } from './job.types.js';
import { Jobs } from './jobs.js';
import { type JobKind, jobKinds } from './rows.js';

const id = { type: () => ID } as const;

@Resolver()
export class JobResolver {
  constructor(private readonly jobs: Jobs) {}

  @AllowEverybody()
  @Query(() => Job, { description: 'How far it is: a few bytes.' })
  async job(@Args('id', id) jobId: string): Promise<Job> {
    return viewOf(await this.jobs.find(jobId));
  }

  @AllowEverybody()
  @Query(() => Job, { nullable: true, description: 'The newest job of a kind for a show.' })
  async latestJob(@Args('kind') kind: string, @Args('tourId', id) tourId: string, @Args('showId', id) showId: string): Promise<Job | null> {
    if (!jobKinds.includes(kind as JobKind))
      throw new BadInputError([{ field: 'kind', value: kind.slice(0, 40), wanted: `one of: ${jobKinds.join(', ')}` }]);
    const row = await this.jobs.latest(kind as JobKind, tourId, showId);
    return row && viewOf(row);
  }

  @Allow('warehouse', 'system')
  @Mutation(() => Job, { description: 'A job that is not over yet ends here; what it planned so far is put away.' })
  async cancelJob(@Args('id', id) jobId: string, @Me() me: SignedIn): Promise<Job> {
    return viewOf(await this.jobs.cancel(jobId, me.name));
  }
}
