import { Query, Resolver } from '@nestjs/graphql';
import { AllowEverybody } from '../../platform/sign-in/signed-in.js';
import { BeginningQuery } from './beginning.query.js';
import { Beginning } from './beginning.types.js';

@Resolver()
export class BeginningResolver {
  constructor(private readonly beginning: BeginningQuery) {}

  @AllowEverybody()
  @Query(() => Beginning, { description: 'What a house has of what a first plan is made from.' })
  beginningOfHouse(): Promise<Beginning> {
    return this.beginning.counts();
  }
}
