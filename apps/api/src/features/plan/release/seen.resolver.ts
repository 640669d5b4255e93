import { Args, ID, Mutation, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { Allow, ByDeputy, Me } from '../../../platform/sign-in/signed-in.js';
import { SeenService } from './seen.service.js';

const id = { type: () => ID } as const;

@Resolver()
export class SeenResolver {
  constructor(private readonly service: SeenService) {}

  @Allow('safety')
  @ByDeputy({ tour: 'tourId' })
  @Mutation(() => Boolean, {
    description:
      'What was done although barred has been looked at, with a reason: it stands in the notes of the show, and stops no longer.',
  })
  async seeBarredAct(
    @Args('tourId', id) tourId: string,
    @Args('id', id) actId: string,
    @Args('because') because: string,
    @Me() me: SignedIn,
  ): Promise<boolean> {
    await this.service.see(tourId, actId, because, me);
    return true;
  }
}
