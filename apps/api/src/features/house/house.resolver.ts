import { Query, Resolver } from '@nestjs/graphql';
import { Allow } from '../../platform/sign-in/signed-in.js';
import { HouseQuery } from './house.query.js';
import { HouseState } from './house.types.js';

@Resolver()
export class HouseResolver {
  constructor(private readonly house: HouseQuery) {}

  @Allow('system')
  @Query(() => HouseState, { description: 'How the house is, for whoever runs it: the figures of /metrics.' })
  houseState(): Promise<HouseState> {
    return this.house.state();
  }
}
