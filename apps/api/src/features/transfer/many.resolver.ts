import { Args, ID, Mutation, Resolver } from '@nestjs/graphql';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { AllowEverybody, Me } from '../../platform/sign-in/signed-in.js';
import { CsvService } from './csv.service.js';
import { reasonOf } from './csv-request.js';
import { CellInput, ManyResult } from './many/many.types.js';

@Resolver()
export class ManyResolver {
  constructor(private readonly csv: CsvService) {}

  @AllowEverybody()
  @Mutation(() => ManyResult, { description: 'The same cells written into many items, at most 200: all of them or none.' })
  changeItems(
    @Args('ids', { type: () => [ID] }) ids: string[],
    @Args('cells', { type: () => [CellInput] }) cells: CellInput[],
    @Args('reason', { type: () => String, nullable: true, description: 'Why the safety officer lets more pass than before.' })
    reason: string | null,
    @Me() me: SignedIn,
  ): Promise<typeof ManyResult> {
    return this.csv.changeMany(ids, cells, me, reasonOf(reason));
  }
}
