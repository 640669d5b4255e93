import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import { UuidArgument } from '../../platform/graphql/uuid-argument.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { Allow, AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { DeputyService } from './deputy.service.js';
import { DeputyInput, DeputyView } from './deputy.types.js';

/** None of these is for deputies: nobody passes on what was given to them for some days. */
@Resolver()
export class DeputyResolver {
  constructor(private readonly service: DeputyService) {}

  @AllowEverybody()
  @Query(() => [DeputyView], { description: 'Who takes the place of a safety officer, when and for what; the newest first.' })
  deputies(): Promise<DeputyView[]> {
    return this.service.list();
  }

  @Allow('safety')
  @Mutation(() => ID, { description: 'Names a deputy: of oneself at once, of another officer once that one, or a third, has signed.' })
  nameDeputy(@Args('deputy') deputy: DeputyInput, @Me() me: SignedIn): Promise<string> {
    return this.service.name(deputy, me);
  }

  @Allow('safety')
  @Mutation(() => Boolean, { description: 'The second signature, of another safety officer than who named.' })
  async signDeputy(@Args('id', { type: () => ID }, new UuidArgument()) id: string, @Me() me: SignedIn): Promise<boolean> {
    await this.service.sign(id, me);
    return true;
  }

  @AllowEverybody()
  @Mutation(() => Boolean, { description: 'Ends it at once: any safety officer, or the deputy.' })
  async withdrawDeputy(@Args('id', { type: () => ID }, new UuidArgument()) id: string, @Me() me: SignedIn): Promise<boolean> {
    await this.service.withdraw(id, me);
    return true;
  }
}
