import { Args, Mutation, ResolveField, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, Me } from '../../platform/sign-in/signed-in.js';
import { Account } from '../account/account.types.js';
import { OnePersonService } from './one-person.service.js';
import { OnePersonTime } from './one-person.types.js';

@Resolver(() => Account)
export class OnePersonResolver {
  constructor(private readonly service: OnePersonService) {}

  @ResolveField(() => [OnePersonTime], { description: 'When one person judged alone in this house, the newest time first.' })
  onePerson(): Promise<OnePersonTime[]> {
    return this.service.times();
  }

  @Allow('safety')
  @Mutation(() => Boolean, {
    description: 'For a house with one safety officer: whether that one accepts, with a reason, what would wait for a second person.',
  })
  async setOnePerson(@Args('isOn') isOn: boolean, @Args('reason') reason: string, @Me() me: SignedIn): Promise<boolean> {
    await this.service.set(isOn, reason, me);
    return true;
  }
}
