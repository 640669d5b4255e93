import { Args, Mutation, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, Me } from '../../platform/sign-in/signed-in.js';
import { OnePersonService } from './one-person.service.js';

@Resolver()
export class OnePersonResolver {
  constructor(private readonly service: OnePersonService) {}

  @Allow('safety')
  @Mutation(() => Boolean, {
    description: 'For a house with one safety officer: whether that one accepts, with a reason, what would wait for a second person.',
  })
  async setOnePerson(@Args('isOn') isOn: boolean, @Args('reason') reason: string, @Me() me: SignedIn): Promise<boolean> {
    await this.service.set(isOn, reason, me);
    return true;
  }
}
