import { Args, ID, Mutation, Query, Resolver } from '@nestjs/graphql';
import { Allow, AllowEverybody } from '../../../platform/sign-in/signed-in.js';
import { CsvImportView } from './import.types.js';
import { Imports } from './imports.js';

@Resolver()
export class ImportResolver {
  constructor(private readonly imports: Imports) {}

  @AllowEverybody()
  @Query(() => CsvImportView, { description: 'How far a file is.' })
  csvImport(@Args('id', { type: () => ID }) id: string): Promise<CsvImportView> {
    return this.imports.find(id);
  }

  @AllowEverybody()
  @Query(() => [CsvImportView], { description: 'The ten newest files that came in beside the requests.' })
  latestCsvImports(): Promise<CsvImportView[]> {
    return this.imports.latest();
  }

  @Allow('warehouse', 'system', 'safety')
  @Mutation(() => CsvImportView, { description: 'An import that is not over yet ends here, and nothing of it is saved.' })
  cancelCsvImport(@Args('id', { type: () => ID }) id: string): Promise<CsvImportView> {
    return this.imports.cancel(id);
  }
}
