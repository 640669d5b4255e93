import { Args, ID, Mutation, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../../platform/sign-in/signed-in.js';
import { ItemPageQuery } from '../item-page.query.js';
import { ItemHead } from '../register.types.js';
import { SerialService } from './serial.service.js';

@Resolver()
export class SerialResolver {
  constructor(
    private readonly service: SerialService,
    private readonly page: ItemPageQuery,
  ) {}

  @AllowEverybody()
  @Mutation(() => ItemHead, {
    description: 'Puts a serial right that was typed wrong. Of what was examined, planned or counted by the safety officer alone.',
  })
  async correctSerial(
    @Args('itemId', { type: () => ID }) itemId: string,
    @Args('serial') serial: string,
    @Args('reason') reason: string,
    @Me() me: SignedIn,
  ): Promise<ItemHead> {
    await this.service.correct({ itemId, serial, reason }, me);
    return this.page.head(serial.trim());
  }
}
