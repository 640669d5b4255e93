import { Args, ID, Query, Resolver } from '@nestjs/graphql';
import { AllowEverybody } from '../../platform/sign-in/signed-in.js';
import { InspectionQuery } from './inspection.query.js';
import { InspectedItems } from './inspection.types.js';

const words = { nullable: true, type: () => [String] } as const;

@Resolver()
export class InspectionResolver {
  constructor(private readonly query: InspectionQuery) {}

  @AllowEverybody()
  @Query(() => InspectedItems, {
    description: 'Items with their records and their lives: those named, or of some kinds and depots, 500 at once by serial.',
  })
  inspectedItems(
    @Args('ids', { type: () => [ID], nullable: true }) ids: string[] | null,
    @Args('kinds', words) kinds: string[] | null,
    @Args('depots', words) depots: string[] | null,
    @Args('after', { type: () => String, nullable: true }) after: string | null,
  ): Promise<InspectedItems> {
    return this.query.items({ ids, kinds, depots, after });
  }
}
