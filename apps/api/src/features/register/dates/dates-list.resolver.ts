import { Args, Int, Query, Resolver } from '@nestjs/graphql';
import { AllowEverybody } from '../../../platform/sign-in/signed-in.js';
import { ExaminedConnection } from '../register.types.js';
import { DatesListQuery } from './dates-list.query.js';

const optional = { nullable: true, type: () => String } as const;
const optionalInt = { nullable: true, type: () => Int } as const;

@Resolver()
export class DatesListResolver {
  constructor(private readonly dates: DatesListQuery) {}

  @AllowEverybody()
  @Query(() => ExaminedConnection, { description: 'Everything that is examined, what may not be used first, then what runs out first.' })
  examinedItems(
    @Args('first', optionalInt) first: number | null,
    @Args('after', optional) after: string | null,
    @Args('depot', optional) depot: string | null,
    @Args('tour', { ...optional, description: 'Id of a tour: what is booked for it.' }) tour: string | null,
    @Args('kind', optional) kind: string | null,
    @Args('days', { ...optionalInt, description: 'What may not be used, and what runs out so many days ahead.' }) days: number | null,
  ): Promise<ExaminedConnection> {
    return this.dates.examined(first, after, { depot, tour, kind, days });
  }
}
